package org.calamus.adapter.vosk;

import org.calamus.core.dialogue.Event;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;

/** Posts the level at the microphone five times a second of sound. */
final class Meter {

  private static final int INTERVAL = AudioSource.RATE / 5;

  private final Clock clock;
  private final EventSink sink;
  private int samples;
  private int peak;

  /** A meter that posts to a sink. */
  Meter(Clock clock, EventSink sink) {
    this.clock = clock;
    this.sink = sink;
  }

  /** Takes the length and the peak of a block, and whether speech is being heard. */
  void hear(int blockSamples, int blockPeak, boolean isSpeech) {
    samples += blockSamples;
    peak = Math.max(peak, blockPeak);
    if (samples >= INTERVAL) {
      int decibels = (int) Math.round(Decibels.ofAmplitude(peak));
      sink.post(new Event.LevelMeasured(clock.now(), decibels, isSpeech));
      samples = 0;
      peak = 0;
    }
  }
}
