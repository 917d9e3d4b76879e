package org.calamus.benchmark;

import java.util.Random;

/** A stream of noise without end, always of the same mean power of 1. */
interface Noise {

  /** Kinds of noise. */
  enum Kind {
    /** The same power in each hertz. */
    WHITE,
    /** The same power in each octave: wind, water and traffic are nearer to it. */
    PINK,
    /** Several people who speak at once. */
    BABBLE
  }

  /** The next sample. */
  double next();

  /** White noise. */
  static Noise white(long seed) {
    Random random = new Random(seed);
    return random::nextGaussian;
  }

  /**
   * Pink noise: white noise through three one-pole filters, within 0.5 dB of 3 dB an octave above
   * 10 Hz at 44.1 kHz (P. Kellet's economy method, from memory), and near enough at 16 kHz.
   */
  static Noise pink(long seed) {
    Noise white = white(seed);
    double[] b = new double[3];
    Noise raw =
        () -> {
          double in = white.next();
          b[0] = 0.99765 * b[0] + in * 0.0990460;
          b[1] = 0.96300 * b[1] + in * 0.2965164;
          b[2] = 0.57000 * b[2] + in * 1.0526913;
          return b[0] + b[1] + b[2] + in * 0.1848;
        };
    return scaledAfter(16_000, raw);
  }

  /** A recording over and over, at a power of 1. */
  static Noise loop(double[] track, long seed) {
    double factor = 1 / Math.sqrt(SpeechLevel.meanPower(track));
    int[] at = {new Random(seed).nextInt(track.length)};
    return () -> {
      at[0] = (at[0] + 1) % track.length;
      return track[at[0]] * factor;
    };
  }

  /**
   * Lets filters settle and brings what comes to a power of 1, by the exact power of the filter.
   */
  private static Noise scaledAfter(int settling, Noise raw) {
    for (int i = 0; i < settling; i++) {
      raw.next();
    }
    double factor = 1 / Math.sqrt(PinkPower.VALUE);
    return () -> raw.next() * factor;
  }

  /** The power of the pink filter's output for white noise of power 1. */
  final class PinkPower {
    /** The sum of the squares of its answer to a single impulse. */
    static final double VALUE = power();

    private PinkPower() {}

    private static double power() {
      double sum = 0;
      double b0 = 0.0990460;
      double b1 = 0.2965164;
      double b2 = 1.0526913;
      double out = b0 + b1 + b2 + 0.1848;
      for (int i = 0; i < 100_000; i++) {
        sum += out * out;
        b0 *= 0.99765;
        b1 *= 0.96300;
        b2 *= 0.57000;
        out = b0 + b1 + b2;
      }
      return sum;
    }
  }
}
