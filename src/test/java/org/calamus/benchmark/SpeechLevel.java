package org.calamus.benchmark;

/**
 * The level of the active part of speech, so that pauses within an utterance do not count.
 *
 * <p>The sound is cut into frames of 20 ms; those that lie within 25 dB of the loudest one are
 * active. The level is the mean power of the active frames, over the whole band of 8 kHz. The same
 * idea as the active speech level of ITU-T P.56, with a simpler rule for what is active.
 */
final class SpeechLevel {

  private static final int FRAME = 320;
  private static final double ACTIVE = Math.pow(10, -2.5);

  private SpeechLevel() {}

  /** The mean power of the active part, in squared steps of 16 bits; 0 for silence. */
  static double power(double[] sound) {
    int frames = Math.max(1, sound.length / FRAME);
    double[] powers = new double[frames];
    double loudest = 0;
    for (int i = 0; i < frames; i++) {
      powers[i] = mean(sound, i * FRAME, Math.min(sound.length, (i + 1) * FRAME));
      loudest = Math.max(loudest, powers[i]);
    }
    double sum = 0;
    int active = 0;
    for (double power : powers) {
      if (power >= loudest * ACTIVE) {
        sum += power;
        active++;
      }
    }
    return sum / active;
  }

  /** The mean power of all of it. */
  static double meanPower(double[] sound) {
    return mean(sound, 0, sound.length);
  }

  /** Where the active part ends, in samples. */
  static int end(double[] sound) {
    double loudest = 0;
    for (int from = 0; from < sound.length; from += FRAME) {
      loudest = Math.max(loudest, mean(sound, from, Math.min(sound.length, from + FRAME)));
    }
    int end = 0;
    for (int from = 0; from < sound.length; from += FRAME) {
      int to = Math.min(sound.length, from + FRAME);
      if (loudest > 0 && mean(sound, from, to) >= loudest * ACTIVE) {
        end = to;
      }
    }
    return end;
  }

  private static double mean(double[] sound, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += sound[i] * sound[i];
    }
    return to > from ? sum / (to - from) : 0;
  }
}
