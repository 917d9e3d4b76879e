package org.calamus.adapter.speaker;

import java.util.Arrays;

/** A phrase with tones sounding into it, given piece by piece. */
final class Mix {

  private int[] samples;
  private int at;

  /** A phrase. */
  Mix(short[] phrase) {
    samples = new int[phrase.length];
    for (int i = 0; i < phrase.length; i++) {
      samples[i] = phrase[i];
    }
  }

  /** Lets more sound begin now. */
  void add(short[] sound) {
    samples = Arrays.copyOf(samples, Math.max(samples.length, at + sound.length));
    for (int i = 0; i < sound.length; i++) {
      samples[at + i] += sound[i];
    }
  }

  /** Whether all was given. */
  boolean isOver() {
    return at >= samples.length;
  }

  /** The next piece at a volume of 0 to 1, filled with silence at the end. */
  short[] next(int length, double volume) {
    short[] piece = new short[length];
    for (int i = 0; i < length && at < samples.length; i++) {
      piece[i] = clipped(volume * samples[at++]);
    }
    return piece;
  }

  /** The end of it, of at most so many samples. */
  short[] last(long length) {
    at = (int) Math.max(0, samples.length - Math.max(0, length));
    return next(samples.length - at, 1);
  }

  private static short clipped(double sample) {
    return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(sample)));
  }
}
