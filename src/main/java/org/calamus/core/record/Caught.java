package org.calamus.core.record;

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

  /** Whether the bird was caught on another day than that on which its record was begun. */
  public boolean isEnteredLater(ZoneId zone) {
    return !day(zone).equals(begunOn(zone));
  }

  /**
   * The instant by which captures are put in order. Of a bird that was entered on a later day it is
   * the time given, and noon where none was.
   */
  public Instant when(ZoneId zone) {
    return isEnteredLater(zone)
        ? day(zone).atTime(time.orElse(LocalTime.NOON)).atZone(zone).toInstant()
        : begun;
  }
}
