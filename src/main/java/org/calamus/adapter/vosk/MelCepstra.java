package org.calamus.adapter.vosk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.calamus.port.AudioSource;

/**
 * The features from which the recogniser tells sounds: mel cepstra (S. Davis and P. Mermelstein,
 * Comparison of parametric representations for monosyllabic word recognition in continuously spoken
 * sentences, IEEE Transactions on Acoustics, Speech, and Signal Processing 28 (4), 1980), with the
 * windows and filters of the built model's own front end.
 *
 * <p>Not thread-safe.
 */
final class MelCepstra {

  /** Coefficients of a frame, the first of which is its loudness. */
  static final int COEFFICIENTS = 13;

  private static final int WINDOW = 410;
  private static final int SHIFT = 160;
  private static final int FFT = 512;
  private static final int FILTERS = 25;
  private static final double LOW = mel(130);
  private static final double STEP = (mel(6_800) - LOW) / (FILTERS + 1);
  private static final int LIFTER = 22;
  private static final double EMPHASIS = 0.97;
  private static final double LEAST_ENERGY = 1.2e-7;

  private final Fourier fourier = new Fourier(FFT);
  private final double[] window = new double[WINDOW];

  /** The weight of each frequency in each filter. */
  private final double[][] filters = new double[FILTERS][FFT / 2];

  /** The transform from logarithms of the filters' energies to coefficients. */
  private final double[][] cosines = new double[COEFFICIENTS][FILTERS];

  MelCepstra() {
    for (int i = 0; i < WINDOW; i++) {
      window[i] = 0.54 - 0.46 * Math.cos(2 * Math.PI * i / (WINDOW - 1));
    }
    for (int f = 0; f < FILTERS; f++) {
      for (int k = 0; k < FFT / 2; k++) {
        double hertz = (double) k * AudioSource.RATE / FFT;
        filters[f][k] = Math.max(0, 1 - Math.abs(position(hertz) - f));
      }
    }
    for (int i = 0; i < COEFFICIENTS; i++) {
      for (int f = 0; f < FILTERS; f++) {
        cosines[i][f] = lifter(i) * cosine(i, f);
      }
    }
  }

  /** The features of each 10 ms of a sound; none where it is shorter than a window. */
  List<double[]> of(short[] sound) {
    List<double[]> all = new ArrayList<>();
    for (int start = 0; start + WINDOW <= sound.length; start += SHIFT) {
      all.add(frame(sound, start));
    }
    return all;
  }

  private double[] frame(short[] sound, int start) {
    double[] real = new double[FFT];
    double[] imaginary = new double[FFT];
    for (int i = 0; i < WINDOW; i++) {
      int before = sound[start + Math.max(0, i - 1)];
      real[i] = (sound[start + i] - EMPHASIS * before) * window[i];
    }
    fourier.forward(real, imaginary);
    double[] logs = new double[FILTERS];
    for (int f = 0; f < FILTERS; f++) {
      double energy = 0;
      for (int k = 0; k < FFT / 2; k++) {
        energy += filters[f][k] * (real[k] * real[k] + imaginary[k] * imaginary[k]);
      }
      logs[f] = Math.log(Math.max(LEAST_ENERGY, energy));
    }
    return Arrays.stream(cosines)
        .mapToDouble(
            row -> {
              double sum = 0;
              for (int f = 0; f < FILTERS; f++) {
                sum += row[f] * logs[f];
              }
              return sum;
            })
        .toArray();
  }

  /**
   * The factors for the amplitudes of a spectrum that change the features of a sound by so much.
   * The first coefficient is left out: its loudness stays.
   *
   * @param change of each coefficient
   * @param bins how many frequencies, from 0 to half of the sampling rate
   */
  static double[] factors(double[] change, int bins) {
    double[] factors = new double[bins];
    for (int k = 0; k < bins; k++) {
      double hertz = (double) k * AudioSource.RATE / (2 * (bins - 1));
      double filter = Math.max(0, Math.min(FILTERS - 1, position(hertz)));
      factors[k] = Math.exp(log(change, filter) / 2);
    }
    return factors;
  }

  /**
   * How the features change where no frequency's factor is beyond a bound, though the change asked
   * for has such.
   *
   * @param change of each coefficient, as it is asked for
   * @param most the largest factor of an amplitude, above 1; its inverse is the least
   */
  static double[] bounded(double[] change, double most) {
    double bound = 2 * Math.log(most);
    double[] bounded = new double[change.length];
    for (int f = 0; f < FILTERS; f++) {
      double log = Math.max(-bound, Math.min(bound, log(change, f)));
      for (int i = 1; i < COEFFICIENTS; i++) {
        bounded[i] += lifter(i) * cosine(i, f) * log;
      }
    }
    return bounded;
  }

  /** By how much a change of the features raises the logarithm of a filter's energy. */
  private static double log(double[] change, double filter) {
    double log = 0;
    for (int i = 1; i < COEFFICIENTS; i++) {
      log += change[i] / lifter(i) * cosine(i, filter);
    }
    return log;
  }

  /** The filter whose middle a frequency is; between two of them where it is not one's. */
  private static double position(double hertz) {
    return (mel(hertz) - LOW) / STEP - 1;
  }

  /** The share of a filter in a coefficient, and of the coefficient in the filter. */
  private static double cosine(int coefficient, double filter) {
    double scale = Math.sqrt((coefficient == 0 ? 1.0 : 2.0) / FILTERS);
    return scale * Math.cos(Math.PI * coefficient * (filter + 0.5) / FILTERS);
  }

  private static double lifter(int coefficient) {
    return 1 + LIFTER / 2.0 * Math.sin(Math.PI * coefficient / LIFTER);
  }

  private static double mel(double hertz) {
    return 1_127 * Math.log(1 + hertz / 700);
  }
}
