package org.calamus.core.hearing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * The hum of the mains in the noise of a place: steady tones at 50 or 60 Hz and their multiples,
 * against the rest of the noise.
 *
 * <p>Each multiple is compared with the sound a little below and above it, so that wind and
 * traffic, which are loud at low frequencies without having tones, are no hum; and half a second at
 * a time, of which the middle one counts, so that neither are voices, whose tones move. Pure.
 *
 * @param hertz the frequency of the mains, 50 or 60
 * @param decibels how loud it is with its multiples, in decibels of full scale
 * @param aboveRest how far it stands above the rest of the noise, in decibels
 */
public record Hum(int hertz, int decibels, int aboveRest) {

  /** Louder than the rest of the noise: without it the noise is less than half; our decision. */
  private static final double STRONG = 0;

  /** Softer is softer than the noise of a quiet room; a design decision. */
  private static final double HEARD = -65;

  /**
   * Public mains keep within 1 percent (EN 50160, from memory); a small generator may be 1 Hz off.
   */
  private static final double FARTHEST_OFF = 1;

  private static final double STEP = 0.25;

  /** What rectifiers and dimmers make reaches so far at least; from memory. */
  private static final int MULTIPLES = 10;

  /**
   * Of a hum so much is in its first three multiples; a single tone higher up is something else.
   */
  private static final double LOW_PART = 0.1;

  /** Where the sound beside a multiple is measured, as a part of the frequency of the mains. */
  private static final double BESIDE = 0.4;

  private static final double FULL_SCALE = 32_768;

  /**
   * Looks for a hum.
   *
   * @param place the sound of the place without speech, in units of 16 bit
   * @param rate its samples a second
   * @return the hum where there is one that is loud enough to be heard and louder than all other
   *     noise; empty where the sound is shorter than half a second
   */
  public static Optional<Hum> in(short[] place, int rate) {
    List<double[]> windows = windows(place, rate / 2);
    if (windows.isEmpty()) {
      return Optional.empty();
    }
    Hum fifty = measured(windows, rate, 50);
    Hum sixty = measured(windows, rate, 60);
    return Optional.of(fifty.decibels >= sixty.decibels ? fifty : sixty)
        .filter(h -> h.aboveRest >= STRONG && h.decibels >= HEARD);
  }

  private static Hum measured(List<double[]> windows, int rate, int mains) {
    double loudest = 0;
    for (double off = -FARTHEST_OFF; off <= FARTHEST_OFF; off += STEP) {
      loudest = Math.max(loudest, tones(windows, rate, mains + off));
    }
    double whole = median(windows.stream().mapToDouble(w -> w[w.length - 1]));
    double hum = Math.min(loudest, whole);
    double rest = Math.max(whole - hum, whole / 1000);
    return new Hum(mains, decibels(hum / FULL_SCALE / FULL_SCALE), decibels(hum / rest));
  }

  /** The power of the steady tones at all multiples; 0 where they are not those of a hum. */
  private static double tones(List<double[]> windows, int rate, double mains) {
    double low = 0;
    double all = 0;
    for (int multiple = 1; multiple <= MULTIPLES; multiple++) {
      all += tone(windows, rate, mains, multiple);
      low = multiple == 3 ? all : low;
    }
    return low >= LOW_PART * all ? all : 0;
  }

  private static double tone(List<double[]> windows, int rate, double mains, int multiple) {
    double hertz = mains * multiple;
    double beside = BESIDE * mains;
    return Math.max(
        0,
        median(
            windows.stream()
                .mapToDouble(
                    w ->
                        power(w, rate, hertz)
                            // the mean of the logarithms: noise that falls with frequency is even
                            - Math.sqrt(
                                power(w, rate, hertz - beside) * power(w, rate, hertz + beside)))));
  }

  /** Halves overlapping, each weighted towards its middle; the last number is its mean power. */
  private static List<double[]> windows(short[] sound, int length) {
    List<double[]> windows = new ArrayList<>();
    for (int from = 0; from + length <= sound.length; from += length / 2) {
      double[] window = new double[length + 1];
      double squares = 0;
      for (int i = 0; i < length; i++) {
        // Hann's window, with which a tone leaks into its neighbours least where they are measured
        double weight = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / length);
        window[i] = weight * sound[from + i];
        squares += (double) sound[from + i] * sound[from + i];
      }
      window[length] = squares / length;
      windows.add(window);
    }
    return windows;
  }

  /** The mean power of a tone of that frequency in a window, by Goertzel's recurrence. */
  private static double power(double[] window, int rate, double hertz) {
    double factor = 2 * Math.cos(2 * Math.PI * hertz / rate);
    int length = window.length - 1;
    double last = 0;
    double before = 0;
    for (int i = 0; i < length; i++) {
      double now = window[i] + factor * last - before;
      before = last;
      last = now;
    }
    double squared = last * last + before * before - factor * last * before;
    // the weights add up to half the length; a tone's mean power is half its height squared
    return 8 * squared / length / length;
  }

  private static double median(DoubleStream values) {
    double[] sorted = values.sorted().toArray();
    return sorted[sorted.length / 2];
  }

  private static int decibels(double power) {
    return (int) Math.round(Math.max(-96, 10 * Math.log10(power)));
  }
}
