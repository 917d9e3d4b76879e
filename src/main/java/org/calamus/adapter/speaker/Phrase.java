package org.calamus.adapter.speaker;

import org.calamus.core.dialogue.Event;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;

/**
 * A phrase to be said, which owes the engine exactly one {@code VoiceBegan} and then one {@code
 * VoiceEnded}, whatever becomes of it. Not thread-safe: the voice guards it.
 */
final class Phrase {

  private final String text;
  private final Clock clock;
  private final EventSink sink;
  private boolean hasBegun;
  private boolean hasEnded;

  Phrase(String text, Clock clock, EventSink sink) {
    this.text = text;
    this.clock = clock;
    this.sink = sink;
  }

  /** What to say. */
  String text() {
    return text;
  }

  /** The first sound went out. */
  void begin() {
    if (!hasBegun) {
      hasBegun = true;
      sink.post(new Event.VoiceBegan(clock.now()));
    }
  }

  /** It was said, cut off, or cannot be said. */
  void end() {
    begin();
    if (!hasEnded) {
      hasEnded = true;
      sink.post(new Event.VoiceEnded(clock.now()));
    }
  }
}
