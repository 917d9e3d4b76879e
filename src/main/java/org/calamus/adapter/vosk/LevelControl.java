package org.calamus.adapter.vosk;

/**
 * Brings speech to the level that the recogniser knows, slowly, so that a quiet microphone is heard
 * as well as a loud one. A factor of 0.3 to 2 of the usual level is harmless to it; a tenth is not.
 *
 * <p>The level of speech is followed from block to block while somebody speaks and kept between
 * utterances; the factor glides within a block and never clips.
 */
final class LevelControl {

  /** Speech of the voices with which the model was tuned lies about here, as root mean square. */
  private static final double TARGET = -22;

  private static final double LARGEST_GAIN = 26;
  private static final double SMALLEST_GAIN = -10;

  /** The part of the way to a louder block's level that one block of 50 ms goes. */
  private static final double STEP_UP = 0.3;

  /** The same for a softer one: words fall off towards their end. */
  private static final double STEP_DOWN = 0.05;

  /** A pause within the utterance is this far below it and says nothing about its level. */
  private static final double PAUSE_BELOW = 15;

  /** The onset of a word is this much softer than the rest. */
  private static final double ONSET_BELOW = 6;

  /** False until the first speech was heard, which sets the level at once. */
  private boolean isSet;

  private double level = TARGET;
  private double factor = 1;

  /** Learns the level of a block of speech. */
  void learn(short[] speech) {
    double energy = 0;
    for (short sample : speech) {
      energy += (double) sample * sample;
    }
    double heard = Decibels.ofAmplitude(Math.sqrt(energy / Math.max(1, speech.length)));
    if (!isSet) {
      level = heard + ONSET_BELOW;
      isSet = true;
    } else if (heard > level) {
      level += STEP_UP * (heard - level);
    } else if (heard > level - PAUSE_BELOW) {
      level += STEP_DOWN * (heard - level);
    }
  }

  /** The block at the level wanted. */
  short[] apply(short[] block) {
    double wanted =
        Decibels.factor(Math.max(SMALLEST_GAIN, Math.min(LARGEST_GAIN, TARGET - level)));
    int peak = Decibels.peak(block);
    double most = peak == 0 ? wanted : Math.min(wanted, 0.95 * Short.MAX_VALUE / peak);
    double from = Math.min(factor, most);
    short[] out = new short[block.length];
    for (int i = 0; i < block.length; i++) {
      out[i] = (short) Math.round(block[i] * (from + (most - from) * i / block.length));
    }
    factor = most;
    return out;
  }

  /** Starts an utterance: its first block gets the factor of the level known, without a glide. */
  void begin() {
    factor = Decibels.factor(Math.max(SMALLEST_GAIN, Math.min(LARGEST_GAIN, TARGET - level)));
  }
}
