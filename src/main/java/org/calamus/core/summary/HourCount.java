package org.calamus.core.summary;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.calamus.core.record.Caught;
import org.calamus.core.record.PastCapture;

/**
 * How many birds were caught in an hour of the day, as the clock at the station shows it.
 *
 * @param hour 0 to 23
 * @param birds the birds
 */
public record HourCount(int hour, Tally birds) {

  /**
   * The hours from the first with a bird to the last, those between without a bird among them.
   *
   * @param captures the captures of one day
   * @param zone the station's zone
   * @return none where there is no bird
   */
  public static List<HourCount> of(List<PastCapture> captures, ZoneId zone) {
    TreeMap<Integer, Tally> byHour = new TreeMap<>();
    for (PastCapture capture : captures) {
      if (capture.kind().hasBird()) {
        timeOf(capture, zone)
            .ifPresent(t -> byHour.merge(t.getHour(), Tally.of(List.of(capture)), Tally::plus));
      }
    }
    List<HourCount> hours = new ArrayList<>();
    for (int hour = 0; hour < 24 && !byHour.isEmpty(); hour++) {
      if (hour >= byHour.firstKey() && hour <= byHour.lastKey()) {
        hours.add(new HourCount(hour, byHour.getOrDefault(hour, Tally.NONE)));
      }
    }
    return hours;
  }

  /**
   * When the bird was caught: the capture time that was given, or else when it was in the hand. Of
   * one entered on a later day without a time the hour is not known.
   */
  private static Optional<LocalTime> timeOf(PastCapture capture, ZoneId zone) {
    Caught caught = capture.caught();
    return caught.isTimed(zone)
        ? caught.time().or(() -> Optional.of(caught.begun().atZone(zone).toLocalTime()))
        : Optional.empty();
  }
}
