package org.calamus.adapter.vosk;

import java.util.Arrays;

/**
 * Follows the power of the noise in each frequency while somebody speaks or not.
 *
 * <p>In each frame the noise is what the frame holds where speech is unlikely, and stays what it
 * was where speech is likely (T. Gerkmann and R. C. Hendriks, Unbiased MMSE-based noise power
 * estimation with low complexity and low tracking delay, IEEE Transactions on Audio, Speech, and
 * Language Processing 20 (4), 2012). So a generator that is switched on is noise after about a
 * second. The first frames are taken for noise.
 */
final class NoiseSpectrum {

  /**
   * Speech, where there is any, is taken to stand so far above the noise: 15 dB, as in the paper.
   */
  private static final double SPEECH_TO_NOISE = Math.pow(10, 1.5);

  /** The part of the old estimate that stays; the paper's 0.8 is for frames twice as far apart. */
  private static final double KEPT = 0.9;

  /** The same for the mean that notices a frequency in which speech never seems to end. */
  private static final double KEPT_OF_MEAN = 0.95;

  private static final double SURE_OF_SPEECH = 0.99;
  private static final int FIRST_FRAMES = 12;

  private final double least;
  private final double[] power;
  private final double[] meanPresence;
  private int frames;

  /**
   * Knows no noise yet.
   *
   * @param bins how many frequencies
   * @param least the least power of noise there is, so that digital silence has some
   */
  NoiseSpectrum(int bins, double least) {
    this.least = least;
    power = new double[bins];
    meanPresence = new double[bins];
    Arrays.fill(power, least);
  }

  /** Learns from the powers of a frame and gives those of the noise, to be read only. */
  double[] learn(double[] frame) {
    boolean isFirst = frames < FIRST_FRAMES;
    frames += isFirst ? 1 : 0;
    for (int i = 0; i < power.length; i++) {
      double estimate = isFirst ? frame[i] : withoutSpeech(i, frame[i]);
      double kept = isFirst ? 1 - 1.0 / frames : KEPT;
      power[i] = Math.max(least, kept * power[i] + (1 - kept) * estimate);
    }
    return power;
  }

  private double withoutSpeech(int bin, double heard) {
    double exponent = heard / power[bin] * SPEECH_TO_NOISE / (1 + SPEECH_TO_NOISE);
    double presence = 1 / (1 + (1 + SPEECH_TO_NOISE) * Math.exp(-Math.min(exponent, 200)));
    meanPresence[bin] = KEPT_OF_MEAN * meanPresence[bin] + (1 - KEPT_OF_MEAN) * presence;
    if (meanPresence[bin] > SURE_OF_SPEECH) {
      presence = Math.min(presence, SURE_OF_SPEECH);
    }
    return presence * power[bin] + (1 - presence) * heard;
  }
}
