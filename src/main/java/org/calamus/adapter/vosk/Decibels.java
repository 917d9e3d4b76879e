package org.calamus.adapter.vosk;

/** Levels in decibels below the full scale of 16 bit, 0 to {@link #NOTHING}. */
final class Decibels {

  /** The level given to digital silence: that of one unit of 16 bit is -90. */
  static final int NOTHING = -96;

  private static final double FULL_SCALE = 32_768;

  private Decibels() {}

  /** The level of an amplitude in units of 16 bit. */
  static double ofAmplitude(double amplitude) {
    return amplitude <= 0 ? NOTHING : Math.max(NOTHING, 20 * Math.log10(amplitude / FULL_SCALE));
  }

  /** The largest amplitude of some sound, 0 to 32,768. */
  static int peak(short[] samples) {
    int peak = 0;
    for (short sample : samples) {
      peak = Math.max(peak, Math.abs((int) sample));
    }
    return peak;
  }

  /** The factor that changes a level by so many decibels. */
  static double factor(double decibels) {
    return Math.pow(10, decibels / 20);
  }
}
