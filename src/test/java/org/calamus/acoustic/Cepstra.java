package org.calamus.acoustic;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * The recogniser's front end in double precision, written down anew for comparison: mel cepstra,
 * and their mean normalised over what was heard so far.
 */
public final class Cepstra {

  private static final int WINDOW = 410;
  private static final int SHIFT = 160;
  private static final int FFT = 512;
  private static final int FILTERS = 25;
  private static final int CEPSTRA = 13;
  private static final int NORMALISED_OVER = 600;
  private static final int PRIOR_FRAMES = 200;

  private Cepstra() {}

  /** Reads the samples of a WAV file with the usual 44-byte header. */
  public static double[] samples(byte[] wav) {
    ByteBuffer buffer = ByteBuffer.wrap(wav).order(ByteOrder.LITTLE_ENDIAN).position(44);
    double[] samples = new double[(wav.length - 44) / 2];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = buffer.getShort();
    }
    return samples;
  }

  /** Computes normalised frames. */
  public static double[][] normalised(double[] samples, double[] prior) {
    double[][] frames = frames(samples);
    double[][] normalised = new double[frames.length][CEPSTRA];
    double[] sum = new double[CEPSTRA];
    for (int t = 0; t < frames.length; t++) {
      double count = Math.min(t + 1, NORMALISED_OVER);
      double priorCount = Math.min(PRIOR_FRAMES, NORMALISED_OVER - count);
      for (int i = 0; i < CEPSTRA; i++) {
        sum[i] += frames[t][i] - (t >= NORMALISED_OVER ? frames[t - NORMALISED_OVER][i] : 0);
        normalised[t][i] = frames[t][i] - (sum[i] + priorCount * prior[i]) / (count + priorCount);
      }
    }
    return normalised;
  }

  /** The features of each 10 ms. */
  public static double[][] frames(double[] samples) {
    int count = (samples.length - WINDOW) / SHIFT + 1;
    double[][] filters = filters();
    double[][] frames = new double[count][];
    for (int t = 0; t < count; t++) {
      double[] window = new double[FFT];
      for (int i = 0; i < WINDOW; i++) {
        double now = samples[t * SHIFT + i];
        double before = samples[t * SHIFT + Math.max(i - 1, 0)];
        window[i] =
            (now - 0.97 * before) * (0.54 - 0.46 * Math.cos(2 * Math.PI * i / (WINDOW - 1)));
      }
      frames[t] = cepstrum(power(window), filters);
    }
    return frames;
  }

  /** The plain sum, not the fast one: slower, and nothing to get wrong. */
  private static double[] power(double[] window) {
    double[] cos = new double[FFT];
    double[] sin = new double[FFT];
    for (int i = 0; i < FFT; i++) {
      cos[i] = Math.cos(2 * Math.PI * i / FFT);
      sin[i] = Math.sin(2 * Math.PI * i / FFT);
    }
    double[] power = new double[FFT / 2];
    for (int k = 0; k < power.length; k++) {
      double re = 0;
      double im = 0;
      for (int i = 0; i < WINDOW; i++) {
        int angle = k * i % FFT;
        re += window[i] * cos[angle];
        im += window[i] * sin[angle];
      }
      power[k] = re * re + im * im;
    }
    return power;
  }

  private static double mel(double hertz) {
    return 1127 * Math.log(1 + hertz / 700);
  }

  private static double[][] filters() {
    double low = mel(130);
    double step = (mel(6800) - low) / (FILTERS + 1);
    double[][] filters = new double[FILTERS][FFT / 2];
    for (int f = 0; f < FILTERS; f++) {
      double left = low + f * step;
      for (int k = 0; k < FFT / 2; k++) {
        double at = mel(k * 16000.0 / FFT);
        if (at > left && at < left + 2 * step) {
          filters[f][k] = at <= left + step ? (at - left) / step : (left + 2 * step - at) / step;
        }
      }
    }
    return filters;
  }

  private static double[] cepstrum(double[] power, double[][] filters) {
    double[] logs = new double[FILTERS];
    for (int f = 0; f < FILTERS; f++) {
      double energy = 0;
      for (int k = 0; k < power.length; k++) {
        energy += filters[f][k] * power[k];
      }
      logs[f] = Math.log(Math.max(energy, 1.1920929e-7));
    }
    double[] cepstrum = new double[CEPSTRA];
    for (int i = 0; i < CEPSTRA; i++) {
      double sum = 0;
      for (int f = 0; f < FILTERS; f++) {
        sum += logs[f] * Math.cos(Math.PI * i * (f + 0.5) / FILTERS);
      }
      double lifter = 1 + 11 * Math.sin(Math.PI * i / 22);
      cepstrum[i] = sum * Math.sqrt((i == 0 ? 1.0 : 2.0) / FILTERS) * lifter;
    }
    return cepstrum;
  }
}
