package org.calamus.port;

import org.calamus.core.speech.Grammar;

/**
 * Hears the bander. Posts {@code Heard}, {@code LevelMeasured}, {@code PartUp} and {@code
 * PartDown}.
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

  @Override
  void close();
}
