package org.calamus.adapter.speaker;

import java.util.Arrays;
import org.calamus.core.dialogue.Tone;

/**
 * The sound of the tones. They differ by contour, not by pitch alone: one rises, one falls, one
 * knocks twice. Soft, low and without a hard edge, since a bird is near: a tenth of the loudness of
 * speech, below 700 Hz, each under 0.2 s. Own design.
 */
final class Tones {

  private static final int RATE = KevinSynthesizer.RATE;
  private static final double AMPLITUDE = 1_600;
  private static final int NOTE_MILLIS = 65;
  private static final int EDGE_MILLIS = 15;

  private Tones() {}

  /** The samples of a tone, at {@link KevinSynthesizer#RATE}. */
  static short[] samples(Tone tone) {
    if (tone == Tone.TAKEN) {
      return notes(440, 660);
    }
    if (tone == Tone.NOT_UNDERSTOOD) {
      return notes(440, 294);
    }
    if (tone == Tone.LOOK_HERE) {
      return notes(523, 0, 523);
    }
    throw new AssertionError(tone);
  }

  /** The samples of a tone at a loudness of 0 to 1. */
  static short[] samples(Tone tone, double loudness) {
    short[] samples = samples(tone);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) Math.round(samples[i] * loudness);
    }
    return samples;
  }

  /** Notes one after another, in hertz; 0 is a pause of half the length. */
  private static short[] notes(int... hertz) {
    short[] all = new short[0];
    for (int note : hertz) {
      short[] next = note == 0 ? new short[RATE * NOTE_MILLIS / 2_000] : note(note);
      int at = all.length;
      all = Arrays.copyOf(all, at + next.length);
      System.arraycopy(next, 0, all, at, next.length);
    }
    return all;
  }

  private static short[] note(int hertz) {
    short[] out = new short[RATE * NOTE_MILLIS / 1_000];
    int edge = RATE * EDGE_MILLIS / 1_000;
    for (int i = 0; i < out.length; i++) {
      double fromEdge = Math.min(1.0, (double) Math.min(i, out.length - 1 - i) / edge);
      double swell = 0.5 - 0.5 * Math.cos(Math.PI * fromEdge);
      out[i] = (short) (AMPLITUDE * swell * Math.sin(2 * Math.PI * hertz * i / RATE));
    }
    return out;
  }
}
