package org.calamus.port;

import org.calamus.core.dialogue.Tone;

/**
 * Speaks to the bander. Posts {@code VoiceBegan} and {@code VoiceEnded} for each phrase, and {@code
 * PartUp} or {@code PartDown}. Where there is no speaker every phrase is answered by the two events
 * at once, so that the dialogue goes on.
 *
 * <pre>{@code
 * voice.start(sink);
 * voice.say("wing nine two. mass");   // cuts off what is still being said
 * voice.hush();
 * }</pre>
 *
 * Every method may be called from the engine's thread and returns at once.
 */
public interface Voice extends AutoCloseable {
  /** Makes ready to speak. */
  void start(EventSink sink);

  /** Speaks the phrase. */
  void say(String phrase);

  /** Falls silent at once. */
  void hush();

  /** Sounds a short tone; the ears need not be shut for it. */
  void sound(Tone tone);

  @Override
  void close();
}
