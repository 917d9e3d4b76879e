package org.calamus.core.summary;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.BandLedger;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.BandTally;
import org.calamus.core.rule.Known;
import org.calamus.core.rule.Rules;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples for the figures. */
class SummaryTest {

  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final LocalDate DAY = LocalDate.of(2026, 6, 13);

  private long lastId;

  private PastCapture capture(String at, CaptureKind kind, String species) {
    Map<FieldId, FieldValue> values = new EnumMap<>(FieldId.class);
    values.put(FieldId.KIND, new FieldValue.Code(kind.code()));
    if (!species.isEmpty()) {
      values.put(FieldId.SPECIES, new FieldValue.Code(species));
    }
    return of(at, values, Set.of());
  }

  private PastCapture of(String at, Map<FieldId, FieldValue> values, Set<FieldId> doubted) {
    return new PastCapture(++lastId, Instant.parse(at), "Fenwick Marsh", "QX", values, doubted);
  }

  @Test
  void countsBirdsBySpeciesOfTheDayAndTheYear() {
    Captures captures =
        Captures.of(
            List.of(
                capture("2025-12-31T15:00:00Z", CaptureKind.NEW, "BCCH"),
                capture("2026-01-01T15:00:00Z", CaptureKind.NEW, "BCCH"),
                capture("2026-05-02T11:00:00Z", CaptureKind.FOREIGN, "SOSP"),
                capture("2026-06-13T11:00:00Z", CaptureKind.NEW, "WBNU"),
                capture("2026-06-13T11:10:00Z", CaptureKind.RECAPTURE, "BCCH"),
                capture("2026-06-13T11:20:00Z", CaptureKind.NEW, "BCCH"),
                capture("2026-06-13T11:30:00Z", CaptureKind.UNBANDED, ""),
                capture("2026-06-13T11:40:00Z", CaptureKind.REPLACED, "BCCH"),
                capture("2026-06-13T11:50:00Z", CaptureKind.DESTROYED, ""),
                capture("2026-06-14T11:00:00Z", CaptureKind.NEW, "BCCH")),
            ZONE);
    List<SpeciesCount> counts = SpeciesCount.of(captures, DAY, ZONE);
    assertThat(counts)
        .containsExactly(
            new SpeciesCount(Optional.of("BCCH"), new Tally(1, 1, 1), new Tally(2, 1, 1)),
            new SpeciesCount(Optional.of("WBNU"), new Tally(1, 0, 0), new Tally(1, 0, 0)),
            new SpeciesCount(Optional.empty(), new Tally(0, 0, 1), new Tally(0, 0, 1)),
            new SpeciesCount(Optional.of("SOSP"), Tally.NONE, new Tally(0, 0, 1)));
    assertThat(SpeciesCount.all(counts))
        .isEqualTo(new SpeciesCount(Optional.empty(), new Tally(2, 1, 2), new Tally(3, 1, 3)));
  }

  /** 03:30 UTC is still the evening before in New York; the year turns by the station's clock. */
  @ParameterizedTest
  @CsvSource({
    "2026-06-14T03:30:00Z, 2026-06-13, 1",
    "2026-06-14T04:00:00Z, 2026-06-13, 0",
    "2026-06-13T04:00:00Z, 2026-06-13, 1",
    "2026-06-13T03:59:59Z, 2026-06-13, 0",
    "2026-01-01T04:59:00Z, 2025-12-31, 1"
  })
  void aDayIsTheStationsDay(String at, LocalDate day, int birds) {
    Captures captures = Captures.of(List.of(capture(at, CaptureKind.NEW, "BCCH")), ZONE);
    assertThat(SpeciesCount.all(SpeciesCount.of(captures, day, ZONE)).day().total())
        .isEqualTo(birds);
  }

  @Test
  void countsBirdsByHourWithTheEmptyHoursBetween() {
    List<PastCapture> day =
        List.of(
            capture("2026-06-13T10:05:00Z", CaptureKind.NEW, "BCCH"),
            capture("2026-06-13T10:59:59Z", CaptureKind.RECAPTURE, "BCCH"),
            capture("2026-06-13T12:00:00Z", CaptureKind.NEW, "BCCH"),
            capture("2026-06-13T16:00:00Z", CaptureKind.LOST, ""));
    assertThat(HourCount.of(day, ZONE))
        .containsExactly(
            new HourCount(6, new Tally(1, 1, 0)),
            new HourCount(7, Tally.NONE),
            new HourCount(8, new Tally(1, 0, 0)));
    assertThat(HourCount.of(List.of(), ZONE)).isEmpty();
  }

  /** The clock goes back from 2 to 1 on this day: both hours are the one that it shows. */
  @Test
  void theHourIsTheOneTheClockShows() {
    List<PastCapture> day =
        List.of(
            capture("2026-11-01T05:30:00Z", CaptureKind.NEW, "SAWO"),
            capture("2026-11-01T06:30:00Z", CaptureKind.NEW, "SAWO"));
    assertThat(HourCount.of(day, ZONE)).containsExactly(new HourCount(1, new Tally(2, 0, 0)));
  }

  @Test
  void theCaptureTimeThatWasGivenCounts() {
    Map<FieldId, FieldValue> values = new EnumMap<>(FieldId.class);
    values.put(FieldId.TIME, new FieldValue.TimeOfDay(LocalTime.of(5, 50)));
    PastCapture late = of("2026-06-13T10:20:00Z", values, Set.of());
    assertThat(HourCount.of(List.of(late), ZONE))
        .containsExactly(new HourCount(5, new Tally(1, 0, 0)));
  }

  @Test
  void theHourOfABirdThatWasEnteredLaterIsKnownFromItsTimeOnly() {
    Map<FieldId, FieldValue> values = new EnumMap<>(FieldId.class);
    values.put(FieldId.DATE, new FieldValue.Day(DAY.minusDays(1)));
    PastCapture dated = of("2026-06-13T10:20:00Z", values, Set.of());
    values.put(FieldId.TIME, new FieldValue.TimeOfDay(LocalTime.of(5, 50)));
    PastCapture timed = of("2026-06-13T10:20:00Z", values, Set.of());
    assertThat(HourCount.of(List.of(dated, timed), ZONE))
        .containsExactly(new HourCount(5, new Tally(1, 0, 0)));
  }

  private static BandNumber band(int number) {
    return BandNumber.parse("2841-55" + number).orElseThrow();
  }

  private static Known known(List<BandString> strings, PastCapture... captures) {
    return Known.of(strings, List.of(captures), ZONE);
  }

  private PastCapture banded(CaptureKind kind, int number) {
    Map<FieldId, FieldValue> values = new EnumMap<>(FieldId.class);
    values.put(FieldId.KIND, new FieldValue.Code(kind.code()));
    values.put(FieldId.BAND, band(number));
    return of("2026-06-13T10:20:00Z", values, Set.of());
  }

  /** 601 and 602 used, 603 lost, 604 destroyed, 605 and 606 passed over, 607 used; 93 are left. */
  @Test
  void accountsForAString() {
    BandString string = new BandString("1B", band(601), band(700));
    BandLedger ledger =
        known(
                List.of(string),
                banded(CaptureKind.NEW, 601),
                banded(CaptureKind.NEW, 602),
                banded(CaptureKind.LOST, 603),
                banded(CaptureKind.DESTROYED, 604),
                banded(CaptureKind.NEW, 607))
            .ledger();
    StringAccount account = StringAccount.of(ledger).get(0);
    assertThat(account)
        .isEqualTo(
            new StringAccount(
                string,
                new BandTally(100, 3, 1, 1, 95),
                List.of(new BandString("1B", band(605), band(606))),
                Optional.of(band(605)),
                List.of(band(603)),
                List.of(band(604))));
    assertThat(account.unexplainedCount()).isEqualTo(2);
    assertThat(account.left()).isEqualTo(93);
    assertThat(account.isFinished()).isFalse();
  }

  @Test
  void aStringUsedUpHasNoNext() {
    BandString string = new BandString("1B", band(601), band(602));
    BandLedger ledger =
        known(List.of(string), banded(CaptureKind.NEW, 601), banded(CaptureKind.NEW, 602)).ledger();
    StringAccount account = StringAccount.of(ledger).get(0);
    assertThat(account.next()).isEmpty();
    assertThat(account.left()).isZero();
    assertThat(account.isFinished()).isTrue();
  }

  @Test
  void aStringThatWasLearntBeginsWithItsFirstBand() {
    BandLedger ledger = known(List.of(), banded(CaptureKind.NEW, 650)).ledger();
    assertThat(StringAccount.of(ledger))
        .extracting(StringAccount::string, StringAccount::left)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(new BandString("", band(650), band(700)), 50L));
    assertThat(StringAccount.of(BandLedger.empty())).isEmpty();
  }

  @Test
  void whatIsToBeLookedAtAgainComesFirst() {
    FieldValue wing = new FieldValue.Code("SY");
    PastCapture plain = capture("2026-06-13T10:00:00Z", CaptureKind.NEW, "BCCH");
    PastCapture kept = of("2026-06-13T10:10:00Z", Map.of(FieldId.AGE, wing), Set.of(FieldId.AGE));
    PastCapture remarked =
        of(
            "2026-06-13T10:20:00Z",
            Map.of(FieldId.NOTE, new FieldValue.Note("tail worn", Optional.empty())),
            Set.of());
    PastCapture noted =
        of(
            "2026-06-13T10:30:00Z",
            Map.of(
                FieldId.AGE,
                new FieldValue.Code("SY"),
                FieldId.RELEASE,
                new FieldValue.Code("RELEASED")),
            Set.of());
    Rules rules = Fenwick.setup().rules();
    List<DayRecord> records =
        DayRecord.of(known(List.of(), plain, noted, remarked, kept), rules, DAY);
    assertThat(records)
        .extracting(DayRecord::capture)
        .containsExactly(kept, remarked, noted, plain);
    assertThat(records.get(2).notes()).extracting(f -> f.rule()).contains("age.how-empty");
    assertThat(records)
        .extracting(DayRecord::isToBeLookedAt)
        .containsExactly(true, true, true, false);
  }
}
