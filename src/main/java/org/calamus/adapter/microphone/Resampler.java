package org.calamus.adapter.microphone;

import java.util.Arrays;

/**
 * Turns sound of one sampling rate into another, block by block, so that a microphone that only
 * works at 44.1 or 48 kHz can be heard by a recogniser that wants 16 kHz.
 *
 * <p>The two rates stand to each other as {@code up : down}, two whole numbers. In thought the
 * sound is filled with {@code up - 1} zeros between samples, freed from everything above half of
 * the lower rate, and every {@code down}-th sample is kept. Only the samples kept are computed:
 * each from the part of the filter (its phase) that meets real samples. The filter is a sinc under
 * a Kaiser window.
 *
 * <p>Not thread-safe. The output lags by half the filter, about 2 ms.
 */
final class Resampler {

  /** Zero crossings of the sinc on each side: passes up to 6.8 kHz, stops at 8 kHz. */
  private static final int CROSSINGS = 32;

  /** Kaiser's beta for 80 dB: 0.1102 (80 - 8.7), from memory. */
  private static final double BETA = 7.857;

  /**
   * The middle of the slope as a part of half the lower rate. The slope of this filter is (80 - 8)
   * / (14.36 x 64) = 0.078 of the lower rate wide (Kaiser's formula, from memory), so that its
   * lower end lies at half the rate.
   */
  private static final double SLOPE = 0.922;

  private final int up;
  private final int down;
  private final int taps;
  private final float[][] phases;
  private float[] pending;
  private int pendingCount;
  private long phase;

  /**
   * A resampler between two rates.
   *
   * @param from samples a second given, at least 1
   * @param to samples a second wanted, at least 1
   */
  Resampler(int from, int to) {
    if (from < 1 || to < 1) {
      throw new IllegalArgumentException("a rate must be at least 1");
    }
    int divisor = greatestCommonDivisor(from, to);
    up = to / divisor;
    down = from / divisor;
    double narrowing = Math.min(1.0, (double) to / from);
    taps = up == down ? 1 : 2 * (int) Math.ceil(CROSSINGS / narrowing);
    phases = up == down ? new float[][] {{1f}} : filter(narrowing * SLOPE);
    pending = new float[taps + 4096];
    pendingCount = taps - 1;
  }

  /**
   * Takes the next samples.
   *
   * @param samples the samples given
   * @return the samples that can be computed now; may be empty
   */
  short[] take(short[] samples) {
    if (up == down) {
      return samples.clone();
    }
    append(samples);
    long end = (long) (pendingCount - taps + 1) * up;
    int count = phase >= end ? 0 : (int) ((end - 1 - phase) / down) + 1;
    short[] out = new short[count];
    for (int i = 0; i < count; i++) {
      out[i] = sample((int) (phase / up), phases[(int) (phase % up)]);
      phase += down;
    }
    forget((int) Math.min(phase / up, pendingCount - taps + 1));
    return out;
  }

  /** The last samples, which the filter still holds; nothing may be taken after it. */
  short[] rest() {
    return up == down ? new short[0] : take(new short[taps / 2]);
  }

  private void append(short[] samples) {
    if (pendingCount + samples.length > pending.length) {
      pending = Arrays.copyOf(pending, 2 * (pendingCount + samples.length));
    }
    for (short sample : samples) {
      pending[pendingCount++] = sample;
    }
  }

  private short sample(int start, float[] weights) {
    float sum = 0;
    for (int k = 0; k < taps; k++) {
      sum += weights[k] * pending[start + k];
    }
    return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(sum)));
  }

  private void forget(int count) {
    System.arraycopy(pending, count, pending, 0, pendingCount - count);
    pendingCount -= count;
    phase -= (long) count * up;
  }

  private float[][] filter(double cutoff) {
    float[][] table = new float[up][taps];
    for (int p = 0; p < up; p++) {
      double sum = 0;
      double[] row = new double[taps];
      for (int k = 0; k < taps; k++) {
        // distance from the wanted moment, in samples given
        double x = k - (taps / 2 - 1) - (double) p / up;
        row[k] = sinc(cutoff * x) * kaiser(x / (taps / 2.0));
        sum += row[k];
      }
      for (int k = 0; k < taps; k++) {
        // each phase passes a constant unchanged
        table[p][k] = (float) (row[k] / sum);
      }
    }
    return table;
  }

  private static double sinc(double x) {
    return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  }

  private static double kaiser(double x) {
    return Math.abs(x) >= 1 ? 0 : bessel(BETA * Math.sqrt(1 - x * x)) / bessel(BETA);
  }

  /** The modified Bessel function of the first kind and order zero, by its power series. */
  private static double bessel(double x) {
    double sum = 1;
    double term = 1;
    for (int k = 1; term > sum * 1e-12; k++) {
      term *= (x / (2 * k)) * (x / (2 * k));
      sum += term;
    }
    return sum;
  }

  private static int greatestCommonDivisor(int a, int b) {
    return b == 0 ? a : greatestCommonDivisor(b, a % b);
  }
}
