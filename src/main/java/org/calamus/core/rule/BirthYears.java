package org.calamus.core.rule;

import java.util.OptionalInt;

/**
 * The years in which a bird may have hatched: an interval that may be open below, or hold no year.
 *
 * @param earliest the first possible year; empty where any year before the latest is possible
 * @param latest the last possible year; before the earliest where no year is possible
 */
public record BirthYears(OptionalInt earliest, int latest) {

  /** Any year up to the given one. */
  public static BirthYears upTo(int latest) {
    return new BirthYears(OptionalInt.empty(), latest);
  }

  /** The years from one to the other, both in it; none where they are the wrong way round. */
  public static BirthYears between(int earliest, int latest) {
    return new BirthYears(OptionalInt.of(earliest), latest);
  }

  /** The years that are in both; empty where two statements contradict each other. */
  public BirthYears intersect(BirthYears other) {
    OptionalInt later =
        earliest.isPresent() && other.earliest.isPresent()
            ? OptionalInt.of(Math.max(earliest.getAsInt(), other.earliest.getAsInt()))
            : earliest.isPresent() ? earliest : other.earliest;
    return new BirthYears(later, Math.min(latest, other.latest));
  }

  /** Whether no year is possible. */
  public boolean isEmpty() {
    return earliest.isPresent() && earliest.getAsInt() > latest;
  }

  /** Whether every year of the other is in this one. */
  public boolean holds(BirthYears other) {
    return other.isEmpty() || intersect(other).equals(other);
  }

  /** The years as shown: {@code 2024}, {@code 2023 to 2024}, {@code 2022 or before}, or none. */
  public String text() {
    if (isEmpty()) {
      return "none";
    }
    if (earliest.isEmpty()) {
      return latest + " or before";
    }
    return earliest.getAsInt() == latest
        ? Integer.toString(latest)
        : earliest.getAsInt() + " to " + latest;
  }
}
