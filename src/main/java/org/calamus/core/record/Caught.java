package org.calamus.core.record;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * When a bird was caught. Most are in the hand when their record is begun; one that was written
 * down first, as when the power was out, is entered later and has its own date.
 *
 * @param begun when the record was begun (UTC)
 * @param date the day that was given, on the station's calendar; empty where it is that of the
 *     record
 * @param time the time of day that was given, as the clock at the station showed it; empty where
 *     none was
 */
public record Caught(Instant begun, Optional<LocalDate> date, Optional<LocalTime> time) {

  /** As long as a bird may wait in its bag; one caught longer ago was written on paper. */
  private static final Duration IN_THE_HAND = Duration.ofHours(1);

  /** Checks that every part is there. */
  public Caught {
    Objects.requireNonNull(begun);
    Objects.requireNonNull(date);
    Objects.requireNonNull(time);
  }

  /** As a record's values tell it. */
  static Caught of(Instant begun, Function<FieldId, Optional<FieldValue>> values) {
    return new Caught(
        begun,
        values
            .apply(FieldId.DATE)
            .flatMap(v -> v instanceof FieldValue.Day d ? Optional.of(d.date()) : Optional.empty()),
        values
            .apply(FieldId.TIME)
            .flatMap(
                v ->
                    v instanceof FieldValue.TimeOfDay t
                        ? Optional.of(t.time())
                        : Optional.empty()));
  }

  /** The day at the station. */
  public LocalDate day(ZoneId zone) {
    return date.orElseGet(() -> begunOn(zone));
  }

  /** The day at the station on which the record was begun. */
  public LocalDate begunOn(ZoneId zone) {
    return begun.atZone(zone).toLocalDate();
  }

  /**
   * Whether the bird was not in the hand when its record was begun: it has a date of its own, that
   * of the same day too, and was not caught within the hour before.
   */
  public boolean isEnteredLater(ZoneId zone) {
    return date.isPresent() && !isJustCaught(zone);
  }

  private boolean isJustCaught(ZoneId zone) {
    Optional<Duration> before = caughtAt(zone).map(at -> Duration.between(at, begun));
    return before.filter(b -> !b.isNegative() && b.compareTo(IN_THE_HAND) <= 0).isPresent();
  }

  private Optional<Instant> caughtAt(ZoneId zone) {
    return time.map(t -> day(zone).atTime(t).atZone(zone).toInstant());
  }

  /** Whether {@link #when} is a time of day that is known. */
  public boolean isTimed(ZoneId zone) {
    return time.isPresent() || !isEnteredLater(zone);
  }

  /** Whether it stands behind another one; of two at the same instant none does. */
  public boolean isAfter(Caught other, ZoneId zone) {
    return when(zone).isAfter(other.when(zone));
  }

  /**
   * The instant by which captures are put in order. Of a bird that was entered later it is the time
   * given; where none was, noon of its day, and on the day of the record the record's own.
   */
  public Instant when(ZoneId zone) {
    if (!isEnteredLater(zone)) {
      return begun;
    }
    boolean isSameDay = day(zone).equals(begunOn(zone));
    return caughtAt(zone)
        .orElseGet(
            () -> isSameDay ? begun : day(zone).atTime(LocalTime.NOON).atZone(zone).toInstant());
  }
}
