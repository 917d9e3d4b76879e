package org.calamus.core.hearing;

import java.util.List;

/**
 * The timbre of a voice through its microphone: the mean of the mel cepstra of its speech, pauses
 * and loudness left out.
 *
 * @param means coefficients 1 to 12
 * @param frames how much speech they were learnt from, in steps of 10 ms; not negative
 */
public record Timbre(List<Double> means, int frames) {

  /** How many coefficients there are. */
  public static final int COEFFICIENTS = 12;

  /**
   * Copies the list.
   *
   * @throws IllegalArgumentException where it is none of that many finite numbers
   */
  public Timbre {
    means = List.copyOf(means);
    if (means.size() != COEFFICIENTS || frames < 0 || !means.stream().allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("no timbre: " + means + " of " + frames);
    }
  }
}
