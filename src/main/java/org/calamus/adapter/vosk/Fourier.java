package org.calamus.adapter.vosk;

/**
 * The discrete Fourier transform of a fixed length, a power of two: Cooley and Tukey's, in place.
 *
 * <p>Not changed after it was made, so any thread may use it.
 */
final class Fourier {

  private final int length;
  private final double[] cosines;
  private final double[] sines;
  private final int[] reversed;

  /**
   * A transform.
   *
   * @param length of the arrays, a power of two of at least 2
   */
  Fourier(int length) {
    if (length < 2 || Integer.bitCount(length) != 1) {
      throw new IllegalArgumentException("not a power of two: " + length);
    }
    this.length = length;
    cosines = new double[length / 2];
    sines = new double[length / 2];
    for (int i = 0; i < length / 2; i++) {
      cosines[i] = Math.cos(2 * Math.PI * i / length);
      sines[i] = -Math.sin(2 * Math.PI * i / length);
    }
    reversed = new int[length];
    int bits = Integer.numberOfTrailingZeros(length);
    for (int i = 0; i < length; i++) {
      reversed[i] = Integer.reverse(i) >>> (32 - bits);
    }
  }

  /** From samples to frequencies; both arrays are overwritten. */
  void forward(double[] real, double[] imaginary) {
    reorder(real);
    reorder(imaginary);
    for (int half = 1; half < length; half *= 2) {
      int stride = length / (2 * half);
      for (int start = 0; start < length; start += 2 * half) {
        for (int k = 0; k < half; k++) {
          join(real, imaginary, start + k, start + k + half, k * stride);
        }
      }
    }
  }

  /** From frequencies back to samples; both arrays are overwritten. */
  void inverse(double[] real, double[] imaginary) {
    // with the two parts exchanged the forward transform runs backwards
    forward(imaginary, real);
    for (int i = 0; i < length; i++) {
      real[i] /= length;
      imaginary[i] /= length;
    }
  }

  private void join(double[] real, double[] imaginary, int a, int b, int turn) {
    double c = cosines[turn];
    double s = sines[turn];
    double re = real[b] * c - imaginary[b] * s;
    double im = real[b] * s + imaginary[b] * c;
    real[b] = real[a] - re;
    imaginary[b] = imaginary[a] - im;
    real[a] += re;
    imaginary[a] += im;
  }

  private void reorder(double[] values) {
    for (int i = 0; i < length; i++) {
      int k = reversed[i];
      if (i < k) {
        double kept = values[i];
        values[i] = values[k];
        values[k] = kept;
      }
    }
  }
}
