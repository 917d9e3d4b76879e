package org.calamus.adapter.speaker;

import java.util.Arrays;

/** A phrase with tones sounding into it, given piece by piece. */
final class Mix {

  private final double volume;
  private int[] samples;
  private int at;

  /** A phrase at a volume of 0 to 1. */
  Mix(short[] phrase, double volume) {
    this.volume = volume;
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

  /** The next piece, filled with silence at the end. */
  short[] next(int length) {
    short[] piece = new short[length];
    for (int i = 0; i < length && at < samples.length; i++) {
      double loud = volume * samples[at++];
      piece[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(loud)));
    }
    return piece;
  }
}
