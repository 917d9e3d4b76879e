package org.calamus.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CaughtTest {

  private static final ZoneId NEW_YORK = ZoneId.of("America/New_York");
  private static final Instant EVENING = Instant.parse("2026-06-14T01:30:00Z");

  private static Caught caught(String date, String time) {
    return new Caught(
        EVENING,
        Optional.of(date).filter(d -> !d.isEmpty()).map(LocalDate::parse),
        Optional.of(time).filter(t -> !t.isEmpty()).map(LocalTime::parse));
  }

  @ParameterizedTest
  @CsvSource({
    // the same instant is in two years
    "2027-01-01T03:00:00Z, America/New_York, 2026",
    "2027-01-01T05:00:00Z, America/New_York, 2027",
    "2027-01-01T04:59:59Z, America/New_York, 2026",
    "2026-12-31T09:59:59Z, Pacific/Kiritimati, 2026",
    "2026-12-31T10:00:00Z, Pacific/Kiritimati, 2027"
  })
  void theYearIsTheStations(Instant when, ZoneId zone, int year) {
    assertThat(new Caught(when, Optional.empty(), Optional.empty()).day(zone).getYear())
        .isEqualTo(year);
  }

  @Test
  void aBirdWithoutADateIsOfTheDayOfItsRecord() {
    assertThat(caught("", "05:50").day(NEW_YORK)).isEqualTo("2026-06-13");
    assertThat(caught("", "05:50").when(NEW_YORK)).isEqualTo(EVENING);
    assertThat(caught("", "05:50").isEnteredLater(NEW_YORK)).isFalse();
  }

  /** It was written on paper in the morning and is entered in the evening. */
  @Test
  void aBirdWithTheDateOfItsRecordIsEnteredLaterToo() {
    assertThat(caught("2026-06-13", "05:50").isEnteredLater(NEW_YORK)).isTrue();
    assertThat(caught("2026-06-13", "05:50").when(NEW_YORK)).isEqualTo("2026-06-13T09:50:00Z");
    assertThat(caught("2026-06-13", "05:50").isTimed(NEW_YORK)).isTrue();
    assertThat(caught("2026-06-13", "").isEnteredLater(NEW_YORK)).isTrue();
    assertThat(caught("2026-06-13", "").when(NEW_YORK)).isEqualTo(EVENING);
    assertThat(caught("2026-06-13", "").isTimed(NEW_YORK)).isFalse();
  }

  /**
   * 21:30 by the station's clock; in a night of owls the date may be that of the evening before.
   */
  @ParameterizedTest
  @CsvSource({"21:30, false", "20:30, false", "20:29, true", "21:31, true"})
  void aBirdCaughtWithinTheHourIsInTheHandWhateverItsDate(String time, boolean isLater) {
    assertThat(caught("2026-06-13", time).isEnteredLater(NEW_YORK)).isEqualTo(isLater);
  }

  @Test
  void aBirdOfTheNightBeforeMidnightIsInTheHand() {
    Instant behindMidnight = Instant.parse("2026-06-14T04:10:00Z");
    Caught owl =
        new Caught(
            behindMidnight,
            Optional.of(LocalDate.of(2026, 6, 13)),
            Optional.of(LocalTime.of(23, 50)));
    assertThat(owl.isEnteredLater(NEW_YORK)).isFalse();
    assertThat(owl.day(NEW_YORK)).isEqualTo("2026-06-13");
    assertThat(owl.when(NEW_YORK)).isEqualTo(behindMidnight);
  }

  @Test
  void aBirdThatWasEnteredLaterStandsAtItsTimeOrElseAtNoon() {
    assertThat(caught("2026-06-11", "05:50").when(NEW_YORK)).isEqualTo("2026-06-11T09:50:00Z");
    assertThat(caught("2026-06-11", "").when(NEW_YORK)).isEqualTo("2026-06-11T16:00:00Z");
    assertThat(caught("2026-06-11", "").day(NEW_YORK)).isEqualTo("2026-06-11");
  }
}
