package org.calamus.core.effort;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/** Which moment is meant by a time on the clock that is said without a day. */
public final class ClockTime {

  private ClockTime() {}

  /**
   * The last moment, not after now, at which the clocks at the station showed a time: "ten to
   * midnight", said after midnight, was yesterday. Of an hour that came twice, as the clocks were
   * put back, it is the later one that has passed; a time that was left out, as they were put on,
   * is taken to be as long after the change as it is after the hour that was left out began.
   *
   * @param time the time on the clock
   * @param zone the station's zone
   * @param now the time at which it is said
   */
  public static Instant before(LocalTime time, ZoneId zone, Instant now) {
    ZonedDateTime today = now.atZone(zone).toLocalDate().atTime(time).atZone(zone);
    Instant later = today.withLaterOffsetAtOverlap().toInstant();
    if (!later.isAfter(now)) {
      return later;
    }
    Instant earlier = today.withEarlierOffsetAtOverlap().toInstant();
    return earlier.isAfter(now)
        ? now.atZone(zone)
            .toLocalDate()
            .minusDays(1)
            .atTime(time)
            .atZone(zone)
            .withLaterOffsetAtOverlap()
            .toInstant()
        : earlier;
  }
}
