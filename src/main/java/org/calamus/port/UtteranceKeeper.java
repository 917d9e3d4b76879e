package org.calamus.port;

import java.util.function.Supplier;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Event;
import org.calamus.core.speech.Grammar;

/**
 * Keeps utterances as they were heard, with what became of them. Posts {@code PartUp} and {@code
 * PartDown} of the keeper.
 *
 * <pre>{@code
 * keeper.start(sink);
 * keeper.heard(event, grammar, sound);        // the ears, before they post the event
 * keeper.became(event, () -> account);        // the engine, when it has taken the event's step
 * }</pre>
 *
 * Every method returns at once; what is written is written on a thread of its own, and no failure
 * of it touches the session. An utterance of which nothing became, since the session had ended, is
 * not kept.
 */
public interface UtteranceKeeper extends AutoCloseable {

  /** Begins to keep. */
  void start(EventSink sink);

  /**
   * An utterance was recognised.
   *
   * @param event the event that the ears post
   * @param grammar what was listened for
   * @param sound the sound as the recogniser got it, at {@link AudioSource#RATE}
   */
  void heard(Event.Heard event, Grammar grammar, short[] sound);

  /**
   * The dialogue has answered an utterance.
   *
   * @param event the same event
   * @param account tells what happened; asked later, on the keeper's thread
   */
  void became(Event.Heard event, Supplier<Account> account);

  /** Writes what it has, for two seconds at most. */
  @Override
  void close();

  /** One that keeps nothing. */
  static UtteranceKeeper none() {
    return new None();
  }

  /** Keeps nothing. */
  final class None implements UtteranceKeeper {

    private None() {}

    @Override
    public void start(EventSink sink) {}

    @Override
    public void heard(Event.Heard event, Grammar grammar, short[] sound) {}

    @Override
    public void became(Event.Heard event, Supplier<Account> account) {}

    @Override
    public void close() {}
  }
}
