package org.calamus.port;

import java.time.Duration;
import org.calamus.core.speech.Grammar;

/**
 * Hears the bander. Posts {@code Heard}, {@code LevelMeasured}, {@code MemoRecorded}, {@code
 * MemoFailed}, {@code PartUp} and {@code PartDown}.
 *
 * <pre>{@code
 * ears.start(sink);
 * ears.listenFor(grammar);   // takes effect between two utterances
 * ears.shut();               // while the voice speaks
 * ears.open();               // hears again after a short tail
 * }</pre>
 *
 * Every method may be called from the engine's thread and returns at once; the recogniser works on
 * a thread of its own.
 */
public interface Ears extends AutoCloseable {
  /** Begins to listen. */
  void start(EventSink sink);

  /** Sets what to listen for from the next utterance on. */
  void listenFor(Grammar grammar);

  /** Hears nothing from now on, and forgets what is being heard. */
  void shut();

  /** Hears again, after a tail that lets the echo of the voice die away. */
  void open();

  /** Hears again at once: the voice was cut off. */
  void openAtOnce();

  /** Ends the utterance now, as the release of a talk key does. */
  void finishUtterance();

  /**
   * Takes what is said next down as sound instead of recognising it. Ends after 1.5 s of silence
   * that follow speech, with {@link #stopMemo}, or at its longest; while the ears are shut nothing
   * is taken down. Answered by one {@code MemoRecorded} or {@code MemoFailed}, also where there is
   * no sound; afterwards what is said is recognised again.
   *
   * @param place where the memo goes
   * @param longest when it ends at the latest
   */
  void recordMemo(Memos.Place place, Duration longest);

  /** Ends the memo soon, as a key does; nothing happens where none is being taken. */
  void stopMemo();

  @Override
  void close();
}
