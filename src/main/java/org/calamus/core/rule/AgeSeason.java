package org.calamus.core.rule;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * Which ages may be stated on which dates, by halves of a month.
 *
 * @param rows the code's rows; one that names species holds for these before one that names none
 */
public record AgeSeason(List<Row> rows) {

  /** The halves of months in a year. */
  public static final int HALVES = 24;

  private static final int LAST_OF_FIRST_HALF = 15;

  /** Copies the list. */
  public AgeSeason {
    rows = List.copyOf(rows);
  }

  /** What is said of an age on a date. */
  public enum Verdict {
    /** It is an ordinary one. */
    OK,
    /** It is unusual: the bander is asked, unless the bird's history proves it. */
    ASKS,
    /** It cannot be. */
    REFUSED
  }

  /**
   * A code through the year.
   *
   * @param code the age code
   * @param species the species codes it is for; empty where it is for every other
   * @param halves what holds in each half of a month, from the first of January on
   */
  public record Row(String code, Set<String> species, List<Verdict> halves) {

    /** Checks that the year is whole. */
    public Row {
      Objects.requireNonNull(code);
      species = Set.copyOf(species);
      halves = List.copyOf(halves);
      if (halves.size() != HALVES) {
        throw new IllegalArgumentException(code + " has " + halves.size() + " halves of a month");
      }
    }
  }

  /**
   * What is to be said of an age; nothing, where the table does not have its code.
   *
   * @param code the age code
   * @param species the species code
   * @param day the day at the station
   */
  public Verdict verdict(String code, String species, LocalDate day) {
    int half = (day.getMonthValue() - 1) * 2 + (day.getDayOfMonth() > LAST_OF_FIRST_HALF ? 1 : 0);
    List<Row> ofCode = rows.stream().filter(r -> r.code().equalsIgnoreCase(code)).toList();
    return ofCode.stream()
        .filter(r -> r.species().contains(species))
        .findFirst()
        .or(() -> ofCode.stream().filter(r -> r.species().isEmpty()).findFirst())
        .map(r -> r.halves().get(half))
        .orElse(Verdict.OK);
  }
}
