package org.calamus.core.rule;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What the age classes say of a bird's year of birth, and what a history of them allows today.
 *
 * <p>Every statement of a history is an interval of birth years; the true year lies in all of them.
 * Where they do not meet, one reading, one age or one band is wrong. Derived from the calendar-year
 * system of the Bird Banding Laboratory, "Age (Year Class) and Sex Codes".
 *
 * @param rows the classes; where two say the same, the first is preferred
 */
public record AgeClasses(List<Row> rows) {

  /** Copies the list. */
  public AgeClasses {
    rows = List.copyOf(rows);
  }

  /**
   * One class.
   *
   * @param code its code, such as {@code ASY}
   * @param earliest the first birth year, counted from the year of the statement; empty for any
   * @param latest the last birth year, counted likewise; 0 or less
   */
  public record Row(String code, OptionalInt earliest, int latest) {

    /** Checks the order of the ends. */
    public Row {
      Objects.requireNonNull(code);
      if (latest > 0 || earliest.isPresent() && earliest.getAsInt() > latest) {
        throw new IllegalArgumentException("age class " + code + " ends at " + latest);
      }
    }

    private BirthYears in(int year) {
      return earliest.isPresent()
          ? BirthYears.between(year + earliest.getAsInt(), year + latest)
          : BirthYears.upTo(year + latest);
    }

    /** Smaller for a class that says more: exact classes first, then the older at-least ones. */
    private long vagueness() {
      return earliest.isPresent()
          ? (long) latest - earliest.getAsInt()
          : Integer.MAX_VALUE + (long) latest;
    }
  }

  /**
   * An age as stated at a capture.
   *
   * @param code the class's code
   * @param year the calendar year of the capture, at the station
   */
  public record Statement(String code, int year) {

    /** Checks that the code is there. */
    public Statement {
      Objects.requireNonNull(code);
    }
  }

  /** The possible birth years of a statement; empty where the table does not have its code. */
  public Optional<BirthYears> birthYears(Statement statement) {
    return rows.stream()
        .filter(r -> r.code().equalsIgnoreCase(statement.code()))
        .findFirst()
        .map(r -> r.in(statement.year()));
  }

  /**
   * The birth years that every statement of a history allows. A code that the table does not have
   * says nothing.
   *
   * @return empty where the history has no statement of a known code; holding no year where two
   *     statements contradict each other
   */
  public Optional<BirthYears> birthYears(List<Statement> history) {
    return history.stream().flatMap(s -> birthYears(s).stream()).reduce(BirthYears::intersect);
  }

  /** The first statement, in the order given, that does not meet those before it. */
  public Optional<Statement> contradiction(List<Statement> history) {
    for (int i = 1; i < history.size(); i++) {
      if (birthYears(history.subList(0, i + 1)).map(BirthYears::isEmpty).orElse(false)) {
        return Optional.of(history.get(i));
      }
    }
    return Optional.empty();
  }

  /**
   * The finest class that may be stated of a bird in a year: the narrowest that holds every one of
   * its possible birth years. It is what a history proves, and no advice to look closer.
   *
   * @param birth the bird's possible birth years
   * @param year the year of the statement
   * @param listed the codes that the station uses
   * @return the code, or empty where no class holds, or no birth year is possible
   */
  public Optional<String> finest(BirthYears birth, int year, Set<String> listed) {
    if (birth.isEmpty()) {
      return Optional.empty();
    }
    return rows.stream()
        .filter(r -> listed.contains(r.code()))
        .filter(r -> r.in(year).holds(birth))
        .min(Comparator.comparingLong(Row::vagueness))
        .map(Row::code);
  }

  /**
   * What a class becomes by the passing of years alone: HY of one year is SY of the next.
   *
   * @param statement the class and the year in which it was stated
   * @param year the year asked for
   * @param listed the codes that the station uses
   */
  public Optional<String> inYear(Statement statement, int year, Set<String> listed) {
    return birthYears(statement).flatMap(birth -> finest(birth, year, listed));
  }
}
