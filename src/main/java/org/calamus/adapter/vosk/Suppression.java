package org.calamus.adapter.vosk;

import java.util.Arrays;

/**
 * Takes steady noise such as wind, rain or a generator out of the sound, since the recogniser's
 * tables come from quiet rooms.
 *
 * <p>Each frequency is made softer according to how much of it is noise: by the estimator of log
 * amplitudes with the decision-directed speech-to-noise ratio (Y. Ephraim and D. Malah, Speech
 * enhancement using a minimum mean-square error log-spectral amplitude estimator, IEEE Transactions
 * on Acoustics, Speech, and Signal Processing 33 (2), 1985). Noise is never taken out wholly: an
 * even residue is left, without which single tones come and go that sound like speech to the
 * recogniser.
 *
 * <p>As many samples come out as go in, 32 ms later. Not thread-safe.
 */
final class Suppression {

  private static final int FRAME = 512;
  private static final int HOP = 128;
  private static final int BINS = FRAME / 2 + 1;

  /** How far the output lags behind the input, in samples. */
  static final int DELAY = FRAME;

  /** What the windows of overlapping frames add up to. */
  private static final double OVERLAP = FRAME / (2.0 * HOP);

  /** The hiss of 16 bits' rounding in one frequency of a frame. */
  private static final double LEAST_NOISE = FRAME / 2.0;

  /**
   * The weight of the last frame's result in the speech-to-noise ratio. The paper has 0.98 for
   * frames twice as far apart; that, and a least ratio of -25 dB, cost one word in fifteen in white
   * noise on the tuning voices.
   */
  private static final double DIRECTED = 0.93;

  /** The least speech-to-noise ratio: -15 dB. */
  private static final double LEAST_RATIO = Math.pow(10, -1.5);

  /**
   * What is left of noise: a fifth of its amplitude. Still less heard more of synthetic voices and
   * less of the real speaker, whose "five" became "nine".
   */
  private static final double LEAST_GAIN = Decibels.factor(-14);

  /** Above 40 dB everything is speech. */
  private static final double LARGEST_RATIO = 1e4;

  private final Fourier fourier = new Fourier(FRAME);
  private final NoiseSpectrum noise = new NoiseSpectrum(BINS, LEAST_NOISE);
  private final double[] window = new double[FRAME];
  private final double[] past = new double[FRAME];
  private final double[] overlap = new double[FRAME];
  private final double[] real = new double[FRAME];
  private final double[] imaginary = new double[FRAME];
  private final double[] power = new double[BINS];
  private final double[] speech = new double[BINS];
  private final short[] ready = new short[HOP];
  private final double[] timbre = new double[BINS];
  private int taken;

  /** Knows no noise yet. */
  Suppression() {
    Arrays.fill(timbre, 1);
    for (int i = 0; i < FRAME; i++) {
      window[i] = Math.sin(Math.PI * (i + 0.5) / FRAME);
    }
  }

  /** Brings what is left of the sound to another timbre from now on. */
  void tune(TimbreControl control) {
    System.arraycopy(control.factors(BINS), 0, timbre, 0, BINS);
  }

  /** The next block with its noise taken out, {@link #DELAY} samples late. */
  short[] clean(short[] block) {
    short[] out = new short[block.length];
    for (int i = 0; i < block.length; i++) {
      out[i] = ready[taken];
      past[FRAME - HOP + taken] = block[i];
      if (++taken == HOP) {
        frame();
        taken = 0;
      }
    }
    return out;
  }

  /** Forgets the sound on its way, as after a gap in it; keeps what it knows of the noise. */
  void restart() {
    Arrays.fill(past, 0);
    Arrays.fill(overlap, 0);
    Arrays.fill(speech, 0);
    Arrays.fill(ready, (short) 0);
    taken = 0;
  }

  private void frame() {
    for (int i = 0; i < FRAME; i++) {
      real[i] = past[i] * window[i];
    }
    Arrays.fill(imaginary, 0);
    fourier.forward(real, imaginary);
    weaken();
    fourier.inverse(real, imaginary);
    for (int i = 0; i < FRAME; i++) {
      overlap[i] += real[i] * window[i] / OVERLAP;
    }
    for (int i = 0; i < HOP; i++) {
      ready[i] =
          (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(overlap[i])));
    }
    System.arraycopy(overlap, HOP, overlap, 0, FRAME - HOP);
    Arrays.fill(overlap, FRAME - HOP, FRAME, 0);
    System.arraycopy(past, HOP, past, 0, FRAME - HOP);
  }

  private void weaken() {
    for (int i = 0; i < BINS; i++) {
      power[i] = real[i] * real[i] + imaginary[i] * imaginary[i];
    }
    double[] noisePower = noise.learn(power);
    for (int i = 0; i < BINS; i++) {
      double posterior = Math.min(LARGEST_RATIO, power[i] / noisePower[i]);
      double prior =
          DIRECTED * speech[i] / noisePower[i] + (1 - DIRECTED) * Math.max(0, posterior - 1);
      double gain = gain(Math.max(LEAST_RATIO, prior), posterior);
      speech[i] = gain * gain * power[i];
      apply(i, Math.max(LEAST_GAIN, gain) * timbre[i]);
    }
  }

  private void apply(int bin, double gain) {
    real[bin] *= gain;
    imaginary[bin] *= gain;
    if (bin > 0 && bin < FRAME / 2) {
      real[FRAME - bin] *= gain;
      imaginary[FRAME - bin] *= gain;
    }
  }

  /**
   * The factor for an amplitude.
   *
   * @param prior the speech-to-noise ratio expected
   * @param posterior the ratio of the power heard to the noise
   */
  static double gain(double prior, double posterior) {
    double share = prior / (1 + prior);
    double v = Math.max(1e-8, share * posterior);
    return Math.min(1, share * Math.exp(exponentialIntegral(v) / 2));
  }

  /**
   * The exponential integral E1 of a positive number, to within 2e-7 up to 1 and 5e-5 of its
   * exp(-x)/x above (M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 5.1.53 and
   * 5.1.54).
   */
  static double exponentialIntegral(double x) {
    if (x < 1) {
      double sum = 0.00107857;
      for (double c :
          new double[] {-0.00976004, 0.05519968, -0.24991055, 0.99999193, -0.57721566}) {
        sum = sum * x + c;
      }
      return sum - Math.log(x);
    }
    double above = x * (x + 2.334733) + 0.250621;
    double below = x * (x + 3.330657) + 1.681534;
    return Math.exp(-x) / x * above / below;
  }
}
