package org.calamus.core.readback;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.Range;

/**
 * The mass of a recaptured bird over time.
 *
 * @param earlier the earlier masses, oldest first, at least one
 * @param now the mass of the bird in the hand; empty where it was not taken yet
 * @param unit the unit's symbol
 * @param axis what a drawing spans: all of these, and the published range
 */
public record Course(List<Point> earlier, Optional<BigDecimal> now, String unit, Range axis) {

  /** The lowest third of the masses in a drawing. */
  public static final char LOW = '_';

  /** The middle third. */
  public static final char MIDDLE = '=';

  /** The upper third. */
  public static final char HIGH = '#';

  private static final BigDecimal THREE = BigDecimal.valueOf(3);

  /** Copies the list. */
  public Course {
    earlier = List.copyOf(earlier);
    if (earlier.isEmpty()) {
      throw new IllegalArgumentException("a course without an earlier mass");
    }
  }

  /**
   * One mass.
   *
   * @param day when, on the station's calendar
   * @param amount in the course's unit
   */
  public record Point(LocalDate day, BigDecimal amount) {}

  /** The least and the greatest of all masses, the one of now among them. */
  public Range range() {
    return Strip.around(amounts().stream().map(a -> new Range(a, a)).toList()).orElseThrow();
  }

  /** The masses in words: {@code last 22.0 g on 2026-07-27, now +0.3}. */
  public String words() {
    Point last = earlier.get(earlier.size() - 1);
    String before = "last " + last.amount().toPlainString() + " " + unit + " on " + last.day();
    return now.map(amount -> before + ", now " + signed(amount.subtract(last.amount())))
        .orElse(before);
  }

  private static String signed(BigDecimal change) {
    return (change.signum() >= 0 ? "+" : "") + change.toPlainString();
  }

  /**
   * One mark for each mass, oldest first, the one of now last: {@link #LOW}, {@link #MIDDLE} or
   * {@link #HIGH} by thirds of their own range. Where all are the same they stand in the middle.
   *
   * @param cells the length; where there are more masses the oldest are left out
   */
  public String drawn(int cells) {
    List<BigDecimal> all = amounts();
    List<BigDecimal> shown = all.subList(Math.max(0, all.size() - cells), all.size());
    StringBuilder line = new StringBuilder();
    shown.forEach(amount -> line.append(level(amount)));
    return line + " ".repeat(cells - shown.size());
  }

  private char level(BigDecimal amount) {
    Range range = range();
    BigDecimal span = range.most().subtract(range.least());
    BigDecimal thrice = amount.subtract(range.least()).multiply(THREE);
    if (span.signum() == 0) {
      return MIDDLE;
    }
    if (thrice.compareTo(span) < 0) {
      return LOW;
    }
    return thrice.compareTo(span.add(span)) <= 0 ? MIDDLE : HIGH;
  }

  private List<BigDecimal> amounts() {
    List<BigDecimal> all = new ArrayList<>(earlier.stream().map(Point::amount).toList());
    now.ifPresent(all::add);
    return all;
  }
}
