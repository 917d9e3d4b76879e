package org.calamus.support;

import java.util.Random;

/** Wind in a microphone at an even strength: noise below some 200 Hz, made by rule. */
public final class Wind {

  /** Of a low pass of one pole, at 16 kHz. */
  private static final double SHARE = 0.08;

  private final Random random;
  private double low;
  private double lower;

  /** Wind that blows as the random numbers say. */
  public Wind(Random random) {
    this.random = random;
  }

  /** The next sample at 16 kHz; their root mean square is about 0.15. */
  public double next() {
    low += SHARE * (random.nextGaussian() - low);
    lower += SHARE * (low - lower);
    return lower;
  }
}
