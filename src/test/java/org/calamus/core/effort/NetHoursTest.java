package org.calamus.core.effort;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Worked by hand from the definition: a net of 12 m that is open for one hour is one net-hour,
 * other lengths in proportion (MAPS Manual, second-hand).
 */
class NetHoursTest {

  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final LocalDate DAY = LocalDate.parse("2026-06-13");
  private static final Instant LATER = Instant.parse("2026-12-31T00:00:00Z");
  private static final List<Net> NETS =
      List.of(
          Net.of("1"),
          Net.of("2"),
          new Net("SP", "south pond", new BigDecimal("18")),
          new Net("3", "3", new BigDecimal("6")));

  private final List<NetEvent> events = new ArrayList<>();

  private void event(String net, NetEvent.What what, Instant at, Optional<Long> supersedes) {
    events.add(new NetEvent(events.size() + 1, net, what, at, at, "QX", supersedes));
  }

  private static Instant at(String local) {
    return java.time.LocalDateTime.parse(local).atZone(ZONE).toInstant();
  }

  private void open(String net, String local) {
    event(net, NetEvent.What.OPENED, at(local), Optional.empty());
  }

  private void close(String net, String local) {
    event(net, NetEvent.What.CLOSED, at(local), Optional.empty());
  }

  private NetHours hours(LocalDate day, Captures captures, Instant now) {
    return NetHours.of(day, ZONE, NETS, NetLog.of(events), captures.onDay(day, ZONE), now);
  }

  private NetHours hours() {
    return hours(DAY, Captures.none(), LATER);
  }

  private static PastCapture capture(long id, Instant at, String kind, String net) {
    return new PastCapture(
        id,
        at,
        "Fenwick Marsh",
        "QX",
        Map.of(FieldId.KIND, new FieldValue.Code(kind), FieldId.NET, new FieldValue.Code(net)),
        Set.of());
  }

  @Test
  void tenNetsOfTwelveMetresForSixHoursAreSixtyNetHours() {
    List<Net> ten = new ArrayList<>();
    for (int i = 1; i <= 10; i++) {
      ten.add(Net.of(String.valueOf(i)));
      open(String.valueOf(i), "2026-06-13T05:30");
      close(String.valueOf(i), "2026-06-13T11:30");
    }
    NetHours all = NetHours.of(DAY, ZONE, ten, NetLog.of(events), List.of(), LATER);
    assertThat(all.netHours()).isEqualTo("60.00");
    assertThat(all.nets()).hasSize(10).allMatch(d -> d.netHours().equals(new BigDecimal("6.00")));
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # net, open for, net-hours
          1,     1:00,     1.00
          1,     1:20,     1.33
          1,     0:01,     0.02
          SP,    2:00,     3.00
          SP,    1:30,     2.25
          3,     4:00,     2.00
          3,     0:10,     0.08
          """)
  void aNetCountsByItsLength(String net, String openFor, String expected) {
    open(net, "2026-06-13T06:00");
    String[] parts = openFor.split(":");
    LocalTime end =
        LocalTime.of(6, 0)
            .plusHours(Long.parseLong(parts[0]))
            .plusMinutes(Long.parseLong(parts[1]));
    close(net, "2026-06-13T" + end);
    assertThat(hours().nets()).hasSize(1);
    assertThat(hours().netHours()).isEqualTo(expected);
  }

  @Test
  void theSumIsRoundedOnce() {
    for (String net : List.of("1", "2")) {
      open(net, "2026-06-13T06:00");
      close(net, "2026-06-13T06:20");
    }
    // a third of an hour each is 0.33, together 0.67 and not 0.66
    assertThat(hours().nets()).extracting(d -> d.netHours().toPlainString()).containsOnly("0.33");
    assertThat(hours().netHours()).isEqualTo("0.67");
  }

  @Test
  void aNetThatIsOpenedTwiceCountsBothTimes() {
    open("1", "2026-06-13T06:00");
    close("1", "2026-06-13T07:00");
    open("1", "2026-06-13T08:30");
    close("1", "2026-06-13T10:00");
    assertThat(hours().netHours()).isEqualTo("2.50");
  }

  @Test
  void aNetOpenOverMidnightCountsForBothDays() {
    open("1", "2026-06-12T22:00");
    close("1", "2026-06-13T01:30");
    assertThat(hours(DAY.minusDays(1), Captures.none(), LATER).netHours()).isEqualTo("2.00");
    assertThat(hours().netHours()).isEqualTo("1.50");
    assertThat(hours().nets().get(0).isOpen()).isFalse();
    assertThat(hours(DAY.minusDays(1), Captures.none(), LATER).nets().get(0).isOpen()).isTrue();
  }

  @Test
  void aNetThatIsStillOpenCountsUpToNow() {
    open("1", "2026-06-13T06:00");
    NetHours now = hours(DAY, Captures.none(), at("2026-06-13T08:15"));
    assertThat(now.netHours()).isEqualTo("2.25");
    assertThat(now.nets().get(0).isOpen()).isTrue();
  }

  @Test
  void aNetLeftOpenCountsWholeDaysUntilItIsClosed() {
    open("1", "2026-06-12T06:00");
    assertThat(hours(DAY, Captures.none(), at("2026-06-20T06:00")).netHours()).isEqualTo("24.00");
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # the clocks of New York were put on at 2:00 of 8 March 2026, and back at 2:00 of 1 November
          2026-03-08, 00:30, 04:30, 3.00
          2026-11-01, 00:30, 04:30, 5.00
          2026-06-13, 00:30, 04:30, 4.00
          """)
  void anHourThatTheClocksLeaveOutOrShowTwiceCountsAsItPassed(
      LocalDate day, String from, String to, String expected) {
    open("1", day + "T" + from);
    close("1", day + "T" + to);
    assertThat(hours(day, Captures.none(), LATER).netHours()).isEqualTo(expected);
  }

  @Test
  void theDayOnWhichTheClocksArePutBackHasTwentyFiveHours() {
    open("1", "2026-10-31T12:00");
    close("1", "2026-11-02T12:00");
    assertThat(hours(LocalDate.parse("2026-11-01"), Captures.none(), LATER).netHours())
        .isEqualTo("25.00");
  }

  @Test
  void aCorrectedTimeCountsInPlaceOfTheOther() {
    open("1", "2026-06-13T06:12");
    event("1", NetEvent.What.OPENED, at("2026-06-13T06:00"), Optional.of(1L));
    close("1", "2026-06-13T08:00");
    assertThat(hours().netHours()).isEqualTo("2.00");
    assertThat(NetLog.of(events).events()).as("nothing is thrown away").hasSize(3);
  }

  @Test
  void birdsForAHundredNetHoursAreCountedByNetAndDay() {
    open("1", "2026-06-13T06:00");
    close("1", "2026-06-13T11:00");
    open("SP", "2026-06-13T06:00");
    close("SP", "2026-06-13T10:00");
    Captures captures =
        Captures.of(
            List.of(
                capture(1, at("2026-06-13T06:40"), "N", "1"),
                capture(2, at("2026-06-13T07:40"), "R", "1"),
                capture(3, at("2026-06-13T08:00"), "N", "SP"),
                capture(4, at("2026-06-13T08:10"), "L", "1"),
                capture(5, at("2026-06-12T08:10"), "N", "1")),
            ZONE);
    NetHours day = hours(DAY, captures, LATER);
    NetDay first = day.nets().get(0);
    // 2 birds in 5 net-hours are 40 in 100; a lost band is no bird, and yesterday another day
    assertThat(first.birds()).isEqualTo(2);
    assertThat(first.birdsPer100()).contains(new BigDecimal("40.0"));
    // 1 bird in 4 hours of 18 m, 6 net-hours: 16.666...
    assertThat(day.nets().get(1).birdsPer100()).contains(new BigDecimal("16.7"));
    // 3 birds in 11 net-hours: 27.2727...
    assertThat(day.netHours()).isEqualTo("11.00");
    assertThat(day.birdsPer100()).contains(new BigDecimal("27.3"));
  }

  @Test
  void aBirdOfANetThatWasNeverEnteredAsOpenIsShownWithoutARate() {
    Captures captures = Captures.of(List.of(capture(1, at("2026-06-13T06:40"), "N", "77")), ZONE);
    NetDay day = hours(DAY, captures, LATER).nets().get(0);
    assertThat(day.net()).isEqualTo(Net.of("77"));
    assertThat(day.open()).isEqualTo(Duration.ZERO);
    assertThat(day.birdsPer100()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # said at,                 on the clock, meant
          2026-06-13T08:00,          06:30,        2026-06-13T10:30:00Z
          2026-06-13T00:10,          23:50,        2026-06-13T03:50:00Z
          2026-06-13T08:00,          08:00,        2026-06-13T12:00:00Z
          2026-06-13T08:00,          08:01,        2026-06-12T12:01:00Z
          # 1:30 came twice, at 5:30 and at 6:30 UTC
          2026-11-01T05:00,          01:30,        2026-11-01T06:30:00Z
          # 2:30 was left out: half an hour after the change
          2026-03-08T05:00,          02:30,        2026-03-08T07:30:00Z
          """)
  void aTimeOnTheClockIsTheLastOneThatHasPassed(String now, LocalTime time, Instant meant) {
    assertThat(ClockTime.before(time, ZONE, at(now))).isEqualTo(meant);
  }

  @Test
  void ofAnHourThatComesTwiceTheEarlierIsMeantUntilTheLaterHasPassed() {
    Instant now = Instant.parse("2026-11-01T06:00:00Z");
    assertThat(ClockTime.before(LocalTime.of(1, 30), ZONE, now))
        .isEqualTo(Instant.parse("2026-11-01T05:30:00Z"));
  }
}
