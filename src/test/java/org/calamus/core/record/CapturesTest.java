package org.calamus.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

class CapturesTest {

  private static final Instant DAWN = Instant.parse("2026-05-03T04:10:00Z");
  private static final BandNumber FIRST = new BandNumber("2841", "55601");
  private static final BandNumber SECOND = new BandNumber("2841", "55602");
  private static final BandNumber THIRD = new BandNumber("1750", "00012");

  private static PastCapture capture(long id, long hour, Map<FieldId, FieldValue> values) {
    return new PastCapture(
        id, DAWN.plusSeconds(3600 * hour), "Fenwick Marsh", "QX", values, Set.of());
  }

  private static PastCapture banded(long id, long hour, BandNumber band) {
    return capture(id, hour, Map.of(FieldId.BAND, band));
  }

  private static PastCapture replaced(long id, long hour, BandNumber old, BandNumber band) {
    return capture(id, hour, Map.of(FieldId.OLD_BAND, old, FieldId.BAND, band));
  }

  @Test
  void ofBandIsEmptyForANumberThatNoBirdWore() {
    assertThat(Captures.none().ofBand(FIRST)).isEmpty();
    assertThat(Captures.of(List.of(banded(1, 0, FIRST)), Fenwick.ZONE).ofBand(SECOND)).isEmpty();
  }

  @Test
  void ofBandGivesTheCapturesInOrderOfTimeHoweverTheyCame() {
    PastCapture early = banded(7, 1, FIRST);
    PastCapture late = banded(2, 9, FIRST);
    PastCapture between = banded(3, 5, FIRST);
    PastCapture other = banded(4, 3, SECOND);
    assertThat(Captures.of(List.of(late, other, early), Fenwick.ZONE).with(between).ofBand(FIRST))
        .containsExactly(early, between, late);
  }

  /** A bird that is entered three days late stands on the day on which it was caught. */
  @Test
  void aBirdThatWasEnteredLaterStandsOnItsDay() {
    ZoneId zone = ZoneId.of("America/New_York");
    LocalDate day = LocalDate.of(2026, 5, 1);
    PastCapture before = banded(1, -50, FIRST);
    PastCapture entered =
        capture(3, 24, Map.of(FieldId.BAND, FIRST, FieldId.DATE, new FieldValue.Day(day)));
    PastCapture behind = banded(2, 0, FIRST);
    Captures captures = Captures.of(List.of(behind, before), zone).with(entered);
    assertThat(captures.ofBand(FIRST)).containsExactly(before, entered, behind);
    assertThat(captures.onDay(day, zone)).containsExactly(entered);
    assertThat(captures.byDay(day, zone).get(day)).containsExactly(entered);
    LocalDate enteredOn = LocalDate.of(2026, 5, 4);
    assertThat(captures.onDay(enteredOn, zone)).isEmpty();
    assertThat(captures.ofDayOrEnteredOn(enteredOn, zone)).containsExactly(entered);
    assertThat(captures.ofDayOrEnteredOn(day, zone)).containsExactly(entered);
  }

  @Test
  void ofBandFindsABirdUnderEveryNumberItWore() {
    List<PastCapture> history =
        List.of(
            banded(1, 1, FIRST),
            replaced(2, 2, FIRST, SECOND),
            banded(3, 3, SECOND),
            replaced(4, 4, SECOND, THIRD),
            banded(5, 5, THIRD));
    Captures grown = Captures.none();
    for (PastCapture capture : history) {
      grown = grown.with(capture);
    }
    for (Captures captures : List.of(Captures.of(history, Fenwick.ZONE), grown)) {
      for (BandNumber any : List.of(FIRST, SECOND, THIRD)) {
        assertThat(captures.ofBand(any)).as(any.text()).isEqualTo(history);
      }
    }
  }

  @Test
  void ofBandFindsABirdByANumberThatOnlyItsOldBandTells() {
    PastCapture only = replaced(1, 1, FIRST, SECOND);
    assertThat(Captures.none().with(only).ofBand(FIRST)).containsExactly(only);
  }

  @Test
  void withReplacesTheEarlierVersionOfTheSameRecord() {
    Captures captures =
        Captures.of(List.of(banded(1, 1, FIRST), banded(2, 2, FIRST)), Fenwick.ZONE);
    PastCapture corrected = banded(1, 1, SECOND);
    Captures after = captures.with(corrected);
    assertThat(after.ofBand(FIRST)).containsExactly(banded(2, 2, FIRST));
    assertThat(after.ofBand(SECOND)).containsExactly(corrected);
    assertThat(after.size()).isEqualTo(2);
    assertThat(captures.ofBand(FIRST)).as("the copy before").hasSize(2);
  }

  @Test
  void ofTakesTheLaterVersionOfTheSameRecord() {
    Captures captures =
        Captures.of(List.of(banded(1, 1, FIRST), banded(1, 1, SECOND)), Fenwick.ZONE);
    assertThat(captures.ofBand(FIRST)).isEmpty();
    assertThat(captures.size()).isEqualTo(1);
  }

  @Test
  void withoutForgetsARecordAndCountsIt() {
    Captures captures =
        Captures.of(List.of(banded(1, 1, FIRST), replaced(2, 2, FIRST, SECOND)), Fenwick.ZONE);
    assertThat(captures.without(2).ofBand(SECOND)).isEmpty();
    assertThat(captures.without(2).ofBand(FIRST)).containsExactly(banded(1, 1, FIRST));
    assertThat(captures.without(2).size()).isEqualTo(1);
    assertThat(captures.without(99)).isSameAs(captures);
  }

  @Test
  void sizeCountsAlsoWhatHasNoBand() {
    Captures captures = Captures.none().with(capture(1, 1, Map.of())).with(banded(2, 2, FIRST));
    assertThat(captures.size()).isEqualTo(2);
    assertThat(Captures.none().size()).isZero();
  }

  @Test
  void manyAreTheSameGrownAndMadeAtOnce() {
    List<PastCapture> all = new ArrayList<>();
    Captures grown = Captures.none();
    for (int i = 0; i < 5000; i++) {
      BandNumber band = new BandNumber("2841", String.format(java.util.Locale.ROOT, "%05d", i / 2));
      all.add(banded(i + 1, i, band));
      grown = grown.with(all.get(i));
    }
    Captures made = Captures.of(all, Fenwick.ZONE);
    assertThat(made.size()).isEqualTo(5000);
    assertThat(grown.size()).isEqualTo(5000);
    for (int i = 0; i < 5000; i += 2) {
      BandNumber band = all.get(i).band().orElseThrow();
      assertThat(made.ofBand(band)).containsExactly(all.get(i), all.get(i + 1));
      assertThat(grown.ofBand(band)).containsExactly(all.get(i), all.get(i + 1));
    }
  }

  @Test
  void onDayGoesByTheStationsCalendar() {
    // 04:10 and 23:10 in UTC; at -05:00 that is the evening before and the same day
    Captures captures =
        Captures.of(List.of(banded(1, 0, FIRST), banded(2, 19, FIRST)), Fenwick.ZONE);
    LocalDate third = LocalDate.of(2026, 5, 3);
    ZoneId west = ZoneOffset.ofHours(-5);
    assertThat(captures.onDay(third, ZoneOffset.UTC, FIRST)).hasSize(2);
    assertThat(captures.onDay(third, west, FIRST)).containsExactly(banded(2, 19, FIRST));
    assertThat(captures.onDay(third.minusDays(1), west, FIRST))
        .containsExactly(banded(1, 0, FIRST));
  }

  @Test
  void pastCaptureKeepsTheValuesAndWhatWasDoubted() {
    FieldValue wing = new FieldValue.Measure(new BigDecimal("92.50"), Unit.MILLIMETRE);
    Provenance said = new Provenance(Provenance.Way.SAID, "words");
    CaptureRecord record =
        new CaptureRecord(
            3,
            DAWN,
            "Fenwick Marsh",
            "QX",
            Map.of(
                FieldId.WING, new Entry(wing, said, DAWN, List.of("wing-range")),
                FieldId.SPECIES, new Entry(new FieldValue.Code("WBNU"), said, DAWN, List.of()),
                FieldId.BAND, new Entry(FIRST, said, DAWN, List.of())));
    PastCapture past = PastCapture.of(record);
    assertThat(past)
        .isEqualTo(
            new PastCapture(
                3,
                DAWN,
                "Fenwick Marsh",
                "QX",
                Map.of(
                    FieldId.WING,
                    wing,
                    FieldId.SPECIES,
                    new FieldValue.Code("WBNU"),
                    FieldId.BAND,
                    FIRST),
                Set.of(FieldId.WING)));
    assertThat(past.amount(FieldId.WING)).contains(new BigDecimal("92.50"));
    assertThat(past.code(FieldId.SPECIES)).contains("WBNU");
    assertThat(past.band()).contains(FIRST);
    assertThat(past.value(FieldId.MASS)).isEmpty();
  }

  @Test
  void pastCaptureHasNoDoubtWithoutAValue() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> new PastCapture(1, DAWN, "Fenwick Marsh", "QX", Map.of(), Set.of(FieldId.WING)));
  }
}
