package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.calamus.adapter.sqlite.Birds.later;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Unit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SqliteRecordStoreTest {

  @TempDir Path folder;
  @TempDir Path natives;
  private SqliteRecordStore store;

  @BeforeEach
  void open() {
    store = new SqliteRecordStore(folder, natives);
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void newStoreHoldsNothingAndBeginsWithOne() {
    assertThat(store.unfinished()).isEmpty();
    assertThat(store.saved()).isEmpty();
    assertThat(store.nextRecordId()).isEqualTo(1);
  }

  @Test
  void journalMakesUnfinishedRecordThatOutlivesTheStore() {
    CaptureRecord bird = Birds.banded(1).with(FieldId.WING, Birds.wing("92"));
    store.journal(Birds.banded(1), FieldId.BAND, Birds.band(1));
    store.journal(bird, FieldId.WING, Birds.wing("92"));
    assertThat(store.unfinished()).contains(bird);
    reopen();
    assertThat(store.unfinished()).contains(bird);
    assertThat(store.saved()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("entriesOfEveryKind")
  void journalKeepsEveryPartOfAnEntry(FieldId field, Entry entry) {
    CaptureRecord bird = Birds.empty(1).with(field, entry);
    store.journal(bird, field, entry);
    reopen();
    assertThat(store.unfinished()).contains(bird);
  }

  static Stream<Arguments> entriesOfEveryKind() {
    String odd = "\u0002 ST,+0022.30\t'g\"; DROP TABLE journal;-- \u2640\ud83d\udc26\u0000\n|?";
    return Stream.of(
        row(FieldId.BAND, Birds.band(1)),
        row(FieldId.SPECIES, Birds.code("WBNU")),
        row(FieldId.WING, Birds.wing("92")),
        row(FieldId.MASS, Birds.mass("22.30")),
        row(FieldId.MASS, Birds.mass("0.0000000000000000000123456789012345678901")),
        row(FieldId.MASS, Birds.mass("-0.50")),
        row(
            FieldId.MASS,
            new Entry(
                new FieldValue.Measure(new BigDecimal("22.30"), Unit.GRAM),
                new Provenance(Provenance.Way.MEASURED, odd),
                later(7),
                List.of("mass-range", "mass \u2640 'odd'", "mass-for-species"))),
        row(FieldId.HOW_AGED, Birds.keyed(new FieldValue.Codes(List.of("P", "S", "M")))),
        row(FieldId.HOW_SEXED, Birds.keyed(new FieldValue.Codes(List.of("C")))),
        row(FieldId.TIME, Birds.keyed(new FieldValue.TimeOfDay(LocalTime.of(8, 40)))),
        row(FieldId.TIME, Birds.keyed(new FieldValue.TimeOfDay(LocalTime.MIDNIGHT))),
        row(FieldId.DATE, Birds.keyed(new FieldValue.Day(LocalDate.of(2024, 2, 29)))),
        row(FieldId.NOTE, Birds.keyed(new FieldValue.Note("odd " + odd, Optional.empty()))),
        row(FieldId.NOTE, Birds.keyed(new FieldValue.Note("", Optional.of("1-1.wav")))),
        row(FieldId.NOTE, Birds.keyed(new FieldValue.Note("left eye", Optional.of("1-2.wav")))),
        row(FieldId.NOTE, Birds.keyed(new FieldValue.Note("[1-1.wav]", Optional.empty()))),
        row(
            FieldId.BAND_SIZE,
            new Entry(
                new FieldValue.Code("1B"),
                new Provenance(Provenance.Way.CONCLUDED, "from the string 2841-556"),
                later(8),
                List.of())),
        row(
            FieldId.AGE,
            new Entry(
                new FieldValue.Code("A'H\"Y;"),
                new Provenance(Provenance.Way.KEYED, ""),
                Instant.parse("2026-12-31T23:59:59.999Z"),
                List.of("age-sex"))));
  }

  @Test
  void entriesOfEveryKindLeaveNoKindAndNoWayOut() {
    List<Entry> all = entriesOfEveryKind().map(row -> (Entry) row.get()[1]).toList();
    assertThat(all)
        .extracting(entry -> (Object) entry.value().getClass())
        .contains((Object[]) FieldValue.class.getPermittedSubclasses());
    assertThat(all).extracting(entry -> entry.provenance().way()).contains(Provenance.Way.values());
  }

  private static Arguments row(FieldId field, Entry entry) {
    return Arguments.of(field, entry);
  }

  @Test
  void journalKeepsInstantsToTheMillisecond() {
    Instant fine = Instant.parse("2026-05-03T04:10:00.123987654Z");
    Entry wing = Birds.wing("92");
    Entry finer = new Entry(wing.value(), wing.provenance(), fine, List.of());
    store.journal(Birds.empty(1), FieldId.WING, finer);
    assertThat(store.unfinished().orElseThrow().entry(FieldId.WING).orElseThrow().at())
        .isEqualTo(Instant.parse("2026-05-03T04:10:00.123Z"));
  }

  @Test
  void journalSupersedesOlderValueAndKeepsIt() {
    store.journal(Birds.empty(1), FieldId.WING, Birds.wing("92"));
    store.journal(Birds.empty(1), FieldId.WING, Birds.wing("73"));
    assertThat(store.unfinished()).contains(Birds.empty(1).with(FieldId.WING, Birds.wing("73")));
    assertThat(texts("SELECT text || ' over ' || coalesce(supersedes, '-') FROM journal"))
        .containsExactly("92 over -", "73 over 1");
  }

  @Test
  void journalOfTheSameEntryAgainAddsNoRow() {
    store.journal(Birds.empty(1), FieldId.WING, Birds.wing("92"));
    store.journal(Birds.empty(1), FieldId.WING, Birds.wing("92"));
    assertThat(texts("SELECT text FROM journal")).containsExactly("92");
  }

  @Test
  void journalAddsWhatTheRecordHoldsAndTheJournalLacks() {
    CaptureRecord bird = Birds.banded(1).with(FieldId.SEX, Birds.code("F"));
    store.journal(bird, FieldId.WING, Birds.wing("92"));
    assertThat(store.unfinished()).contains(bird.with(FieldId.WING, Birds.wing("92")));
  }

  @Test
  void journalErasedEmptiesTheFieldAndKeepsItsHistory() {
    store.journal(Birds.banded(1), FieldId.WING, Birds.wing("92"));
    store.journalErased(Birds.banded(1), FieldId.WING, later(20));
    store.journalErased(Birds.banded(1), FieldId.WING, later(21));
    assertThat(store.unfinished()).contains(Birds.banded(1));
    assertThat(texts("SELECT kind || text || entered_at FROM journal WHERE field = 'WING'"))
        .containsExactly("measure922026-05-03T04:10:12.250Z", "erased2026-05-03T04:10:20.250Z");
    CaptureRecord again = Birds.banded(1).with(FieldId.WING, Birds.wing("73"));
    store.journal(again, FieldId.WING, Birds.wing("73"));
    assertThat(store.unfinished()).contains(again);
  }

  @Test
  void journalErasedOfARecordNeverBegunChangesNothing() {
    store.journalErased(Birds.empty(1), FieldId.WING, later(20));
    assertThat(store.nextRecordId()).isEqualTo(1);
    assertThat(store.unfinished()).isEmpty();
  }

  @Test
  void saveEndsTheRecordAndSavedGivesItBack() {
    CaptureRecord bird = full(1);
    store.journal(bird, FieldId.BAND, Birds.band(1));
    store.save(bird, later(60));
    reopen();
    assertThat(store.unfinished()).isEmpty();
    assertThat(store.saved()).containsExactly(bird);
    assertThat(texts("SELECT what || ' ' || at FROM record_event"))
        .containsExactly("saved 2026-05-03T04:11:00.250Z");
  }

  @Test
  void saveStoresWhatWasNeverJournalled() {
    store.save(full(1), later(60));
    assertThat(store.saved()).containsExactly(full(1));
  }

  @Test
  void saveErasesWhatTheRecordNoLongerHolds() {
    store.journal(full(1), FieldId.WING, Birds.wing("92"));
    store.save(full(1).without(FieldId.WING), later(60));
    assertThat(store.saved()).containsExactly(full(1).without(FieldId.WING));
  }

  @Test
  void saveAgainOfTheSameRecordAddsNothing() {
    store.save(full(1), later(60));
    store.save(full(1), later(61));
    assertThat(store.saved()).containsExactly(full(1));
    assertThat(texts("SELECT what FROM record_event")).containsExactly("saved");
  }

  @Test
  void savedFollowsTheOrderOfSaving() {
    store.journal(full(1), FieldId.BAND, Birds.band(1));
    store.save(full(2), later(50));
    store.save(full(1), later(60));
    store.save(full(3), later(70));
    assertThat(store.saved()).containsExactly(full(2), full(1), full(3));
  }

  @Test
  void journalAfterSavingReopensAndSavedStaysAsItWasUntilSavedAgain() {
    store.save(full(1), later(60));
    store.save(full(2), later(70));
    CaptureRecord corrected = full(1).with(FieldId.WING, Birds.wing("73"));
    store.journal(corrected, FieldId.WING, Birds.wing("73"));
    assertThat(store.unfinished()).contains(corrected);
    assertThat(store.saved()).containsExactly(full(1), full(2));
    store.save(corrected, later(90));
    assertThat(store.unfinished()).isEmpty();
    assertThat(store.saved()).containsExactly(corrected, full(2));
    assertThat(texts("SELECT what FROM record_event WHERE record_id = 1"))
        .containsExactly("saved", "reopened", "saved");
  }

  @Test
  void abandonEndsTheRecordAndKeepsItsJournal() {
    store.journal(full(1), FieldId.BAND, Birds.band(1));
    store.abandon(full(1), later(60));
    store.abandon(full(1), later(61));
    assertThat(store.unfinished()).isEmpty();
    assertThat(store.saved()).isEmpty();
    assertThat(store.nextRecordId()).isEqualTo(2);
    assertThat(texts("SELECT text FROM journal")).hasSize(4);
    assertThat(texts("SELECT what FROM record_event")).containsExactly("abandoned");
  }

  @Test
  void abandonOfASavedRecordTakesItOutOfTheSavedOnes() {
    store.save(full(1), later(60));
    store.abandon(full(1), later(61));
    assertThat(store.saved()).isEmpty();
    assertThat(store.unfinished()).isEmpty();
  }

  @Test
  void abandonOfARecordNeverBegunChangesNothing() {
    store.abandon(full(1), later(60));
    assertThat(store.nextRecordId()).isEqualTo(1);
  }

  @Test
  void unfinishedGivesTheNewestOfSeveral() {
    store.journal(Birds.banded(1), FieldId.BAND, Birds.band(1));
    store.journal(Birds.banded(3), FieldId.BAND, Birds.band(3));
    store.journal(Birds.banded(2), FieldId.BAND, Birds.band(2));
    assertThat(store.unfinished()).contains(Birds.banded(3));
    store.save(Birds.banded(3), later(60));
    assertThat(store.unfinished()).contains(Birds.banded(2));
  }

  @Test
  void nextRecordIdIsOneAboveEverythingEverBegun() {
    store.journal(Birds.banded(7), FieldId.BAND, Birds.band(7));
    assertThat(store.nextRecordId()).isEqualTo(8);
    store.abandon(Birds.banded(7), later(60));
    store.save(full(2), later(61));
    reopen();
    assertThat(store.nextRecordId()).isEqualTo(8);
  }

  @Test
  void twoBirdsCannotShareANumber() {
    store.journal(Birds.banded(1), FieldId.BAND, Birds.band(1));
    CaptureRecord other =
        new CaptureRecord(1, later(999), "Fenwick Marsh", "QX", Birds.banded(2).entries());
    assertThatIllegalStateException()
        .isThrownBy(() -> store.journal(other, FieldId.WING, Birds.wing("92")));
    assertThat(store.unfinished()).contains(Birds.banded(1));
    store.save(Birds.banded(1), later(60));
    assertThat(store.saved()).containsExactly(Birds.banded(1));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a b", "what?mode=ro", "50%41", "n#1", "\u00e9t\u00e9"})
  void folderMayHaveAnyName(String name) {
    Path odd = folder.resolve(name);
    try (SqliteRecordStore other = new SqliteRecordStore(odd, natives)) {
      other.save(full(1), later(60));
    }
    assertThat(odd.resolve("calamus.db")).isRegularFile();
    assertThat(SqliteRecordStore.health(odd, natives)).startsWith("1 saved, 0 unfinished");
  }

  @Test
  void closedStoreRefusesToGoOn() {
    store.close();
    assertThatIllegalStateException().isThrownBy(() -> store.nextRecordId());
  }

  @Test
  void connectionSyncsEveryCommit() {
    assertThat(texts("PRAGMA journal_mode")).containsExactly("wal");
    assertThat(texts("PRAGMA synchronous")).containsExactly("2");
    assertThat(texts("PRAGMA foreign_keys")).containsExactly("1");
    assertThat(texts("PRAGMA fullfsync")).containsExactly("1");
    assertThat(texts("PRAGMA busy_timeout")).containsExactly("2000");
  }

  private static CaptureRecord full(long id) {
    return Birds.banded(id)
        .with(FieldId.SPECIES, Birds.code("WBNU"))
        .with(FieldId.WING, Birds.wing("92"))
        .with(FieldId.MASS, Birds.mass("22.30"));
  }

  private void reopen() {
    store.close();
    open();
  }

  private List<String> texts(String sql) {
    return Look.texts(store, sql);
  }
}
