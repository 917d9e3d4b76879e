package org.calamus.core.hearing;

import java.time.Duration;

/**
 * How much of a sound has the pitch of a voice: something in it comes again 70 to 400 times a
 * second, as every vowel does. Wind, rustling cloth and a bird's call have none, however loud.
 *
 * <p>Each frame of 10 ms is compared with itself a little later; the least of the differences, over
 * their mean at all shorter distances, is 0 for a pure pitch and about 1 for noise (A. de Cheveigné
 * and H. Kawahara, YIN, a fundamental frequency estimator for speech and music, Journal of the
 * Acoustical Society of America 111(4), 2002, equation 8). Pure.
 */
public final class Pitch {

  /** The range of speaking voices, children's included, in hertz; from memory. */
  private static final int LOWEST = 70;

  private static final int HIGHEST = 400;

  /** A voice's pitch and its first formant lie below, in hertz; a bird's call above. */
  private static final int PASSES_BELOW = 900;

  /** How much slower the sound is taken after that. */
  private static final int SLOWER = 4;

  private static final int TAPS = 65;

  /**
   * Wider than the 0.1 of the publication, which wants the pitch itself: of the tuning half of the
   * benchmark every utterance in noise has 10 frames below it at least, and wind 2 at most.
   */
  private static final double MOST_DIFFERENT = 0.3;

  /** How far the low part of a pitched frame may lie below the loudest frame: 30 dB of power. */
  private static final double FAINT = 1e-3;

  private Pitch() {}

  /**
   * Measures it.
   *
   * @param sound samples of 16 bit, its noise taken out as far as it can be
   * @param rate its samples a second, a multiple of 400
   * @return the time with a pitch, in steps of 10 ms; zero for a sound of less than 50 ms
   */
  public static Duration in(short[] sound, int rate) {
    double[] samples = new double[sound.length];
    for (int i = 0; i < sound.length; i++) {
      samples[i] = sound[i];
    }
    double[] low = slowed(samples, rate);
    int slowRate = rate / SLOWER;
    int step = slowRate / 100;
    int window = slowRate / 40;
    int farthest = slowRate / LOWEST;
    double faint = FAINT * loudest(samples, rate / 100) * window;
    long pitched = 0;
    for (int at = 0; at + window + farthest <= low.length; at += step) {
      if (energy(low, at, window) > faint
          && difference(low, at, window, slowRate) < MOST_DIFFERENT) {
        pitched++;
      }
    }
    return Duration.ofMillis(10 * pitched);
  }

  /** The least difference between a frame and what follows it at the distance of a pitch. */
  private static double difference(double[] low, int at, int window, int rate) {
    double sum = 0;
    double least = 1;
    for (int distance = 1; distance <= rate / LOWEST; distance++) {
      double squares = 0;
      for (int i = at; i < at + window; i++) {
        double difference = low[i] - low[i + distance];
        squares += difference * difference;
      }
      sum += squares;
      if (distance >= rate / HIGHEST && sum > 0) {
        least = Math.min(least, squares * distance / sum);
      }
    }
    return least;
  }

  private static double energy(double[] sound, int at, int length) {
    double energy = 0;
    for (int i = at; i < at + length; i++) {
      energy += sound[i] * sound[i];
    }
    return energy;
  }

  /** The mean power of the loudest frame. */
  private static double loudest(double[] sound, int frame) {
    double loudest = 0;
    for (int at = 0; at + frame <= sound.length; at += frame) {
      loudest = Math.max(loudest, energy(sound, at, frame) / frame);
    }
    return loudest;
  }

  /** What of the sound is low enough, at a quarter of the rate. */
  private static double[] slowed(double[] sound, int rate) {
    double[] filter = lowPass(rate);
    double[] slow = new double[sound.length / SLOWER];
    for (int i = 0; i < slow.length; i++) {
      for (int tap = 0; tap < TAPS; tap++) {
        int at = i * SLOWER + tap - TAPS / 2;
        if (at >= 0 && at < sound.length) {
          slow[i] += filter[tap] * sound[at];
        }
      }
    }
    return slow;
  }

  /** A sinc in a Hamming window. */
  private static double[] lowPass(int rate) {
    double[] taps = new double[TAPS];
    for (int i = 0; i < TAPS; i++) {
      int middle = i - TAPS / 2;
      double turns = 2.0 * PASSES_BELOW / rate;
      double sinc = middle == 0 ? turns : Math.sin(Math.PI * turns * middle) / (Math.PI * middle);
      taps[i] = sinc * (0.54 - 0.46 * Math.cos(2 * Math.PI * i / (TAPS - 1)));
    }
    return taps;
  }
}
