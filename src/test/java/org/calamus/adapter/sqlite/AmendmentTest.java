package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.port.RecordStore.StoreException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Corrections of saved records, in a real database. */
@Timeout(60)
class AmendmentTest {

  private static final Amendment.Why MISHEARD =
      new Amendment.Why(Amendment.Reason.MISHEARD, Optional.empty(), "ZB");

  private static final CaptureRecord FIRST =
      Birds.banded(1)
          .with(FieldId.SPECIES, Birds.code("WBNU"))
          .with(FieldId.WING, Birds.wing("92"));

  private static final CaptureRecord SECOND = Birds.banded(2);
  private static final CaptureRecord CORRECTED =
      FIRST.with(FieldId.WING, Birds.wing("93")).with(FieldId.MASS, Birds.mass("22.30"));

  @TempDir Path folder;
  @TempDir Path natives;
  private SqliteRecordStore store;

  @BeforeEach
  void saveTwo() {
    store = new SqliteRecordStore(folder, natives);
    store.save(FIRST, Birds.later(60));
    store.save(SECOND, Birds.later(120));
  }

  @AfterEach
  void close() {
    store.close();
  }

  private void reopen() {
    store.close();
    store = new SqliteRecordStore(folder, natives);
  }

  private void begin() {
    store.journal(CORRECTED, FieldId.WING, Birds.wing("93"));
    store.journal(CORRECTED, FieldId.MASS, Birds.mass("22.30"));
  }

  @Test
  void anAmendedRecordIsGivenAsAmendedAndItsOriginalStaysReadable() {
    begin();
    store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(300));
    reopen();
    assertThat(store.saved()).containsExactly(CORRECTED, SECOND);
    assertThat(store.pastCaptures())
        .containsExactly(PastCapture.of(CORRECTED), PastCapture.of(SECOND));
    assertThat(store.asSaved(1)).contains(CORRECTED);
    assertThat(store.original(1)).contains(FIRST);
    assertThat(store.unfinished()).isEmpty();
    assertThat(store.amendments(1))
        .containsExactlyInAnyOrder(
            new Amendment(
                1,
                FieldId.WING,
                Optional.of(Birds.wing("92")),
                Optional.of(Birds.wing("93")),
                MISHEARD,
                Birds.later(300)),
            new Amendment(
                1,
                FieldId.MASS,
                Optional.empty(),
                Optional.of(Birds.mass("22.30")),
                MISHEARD,
                Birds.later(300)));
    assertThat(store.amendments(2)).isEmpty();
  }

  @Test
  void anErasedFieldIsAnAmendmentWithoutANewEntry() {
    store.journalErased(FIRST, FieldId.WING, Birds.later(200));
    Amendment.Why why =
        new Amendment.Why(Amendment.Reason.OTHER, Optional.of("1-9041500.wav"), "QX");
    store.amend(FIRST.without(FieldId.WING), why, List.of(), Birds.later(300));
    reopen();
    assertThat(store.amendments(1))
        .containsExactly(
            new Amendment(
                1,
                FieldId.WING,
                Optional.of(Birds.wing("92")),
                Optional.empty(),
                why,
                Birds.later(300)));
    assertThat(store.saved()).containsExactly(FIRST.without(FieldId.WING), SECOND);
  }

  @Test
  void severalCorrectionsAreListedInTheirOrderAndTheOriginalIsTheFirst() {
    store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(300));
    CaptureRecord again = CORRECTED.with(FieldId.WING, Birds.wing("94"));
    Amendment.Why misread = new Amendment.Why(Amendment.Reason.MISREAD, Optional.empty(), "QX");
    store.amend(again, misread, List.of(), Birds.later(400));
    assertThat(store.original(1)).contains(FIRST);
    assertThat(store.asSaved(1)).contains(again);
    assertThat(store.amendments(1))
        .filteredOn(a -> a.field() == FieldId.WING)
        .extracting(a -> a.before().orElseThrow().value().text() + " " + a.why().reason())
        .containsExactly("92 MISHEARD", "93 MISREAD");
  }

  @Test
  void theSameCorrectionAgainAddsNothing() {
    store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(300));
    long rows = rows();
    store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(301));
    assertThat(rows()).isEqualTo(rows);
  }

  private long rows() {
    return Look.number(
        store,
        "SELECT (SELECT count(*) FROM journal) + (SELECT count(*) FROM amendment)"
            + " + (SELECT count(*) FROM record_event)");
  }

  @Test
  void untilItIsSavedACorrectionLeavesTheSavedRecordAndIsTheUnfinishedOne() {
    begin();
    reopen();
    assertThat(store.saved()).containsExactly(FIRST, SECOND);
    assertThat(store.pastCaptures()).contains(PastCapture.of(FIRST));
    assertThat(store.asSaved(1)).contains(FIRST);
    assertThat(store.unfinished()).contains(CORRECTED);
    assertThat(store.amendments(1)).isEmpty();
  }

  @Test
  void withdrawnTheSavedRecordStaysAndTheNextCorrectionBeginsFromIt() {
    begin();
    store.withdraw(1, Birds.later(250));
    reopen();
    assertThat(store.unfinished()).isEmpty();
    assertThat(store.saved()).containsExactly(FIRST, SECOND);
    assertThat(Look.texts(store, "SELECT what FROM record_event WHERE record_id = 1"))
        .containsExactly("saved", "reopened", "withdrawn");
    CaptureRecord other = FIRST.with(FieldId.SPECIES, Birds.code("BRCR"));
    store.journal(other, FieldId.SPECIES, Birds.code("BRCR"));
    assertThat(store.unfinished()).contains(other);
    store.amend(other, MISHEARD, List.of(), Birds.later(300));
    assertThat(store.saved()).containsExactly(other, SECOND);
    assertThat(store.amendments(1)).extracting(Amendment::field).containsExactly(FieldId.SPECIES);
  }

  @Test
  void withdrawingWhatWasNeverBegunAddsNothing() {
    long rows = rows();
    store.withdraw(1, Birds.later(250));
    store.withdraw(77, Birds.later(250));
    assertThat(rows()).isEqualTo(rows);
  }

  @Test
  void bandsLeftOverAreAccountedForInTheSameTransaction() {
    CaptureRecord lost = Birds.banded(3).with(FieldId.KIND, Birds.code("L"));
    store.amend(CORRECTED, MISHEARD, List.of(lost), Birds.later(300));
    assertThat(store.saved()).containsExactly(CORRECTED, SECOND, lost);
    assertThat(store.nextRecordId()).isEqualTo(4);
  }

  @Test
  void aRecordThatWasNeverSavedCannotBeAmended() {
    assertThatThrownBy(() -> store.amend(Birds.banded(9), MISHEARD, List.of(), Birds.later(300)))
        .isInstanceOf(IllegalStateException.class);
    assertThat(store.saved()).containsExactly(FIRST, SECOND);
    assertThat(store.asSaved(9)).isEmpty();
    assertThat(store.original(9)).isEmpty();
  }

  @Test
  void aRefusedWriteIsToldInASentenceAndLeavesTheSavedRecord() {
    begin();
    Look.run(store, "PRAGMA query_only = ON");
    assertThatThrownBy(() -> store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(300)))
        .isInstanceOf(StoreException.class)
        .hasMessageStartingWith("The correction of record 1 is not saved: ")
        .hasMessageContaining("calamus.db");
    assertThatThrownBy(() -> store.withdraw(1, Birds.later(300)))
        .isInstanceOf(StoreException.class)
        .hasMessageStartingWith("The correction of record 1 is not given up: ");
    Look.run(store, "PRAGMA query_only = OFF");
    assertThat(store.saved()).containsExactly(FIRST, SECOND);
    store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(300));
    assertThat(store.saved()).containsExactly(CORRECTED, SECOND);
  }

  @Test
  void amendmentsAreNeitherChangedNorDeletedNorMadeUp() {
    store.amend(CORRECTED, MISHEARD, List.of(), Birds.later(300));
    for (String sql :
        List.of(
            "UPDATE amendment SET reason = 'misread'",
            "DELETE FROM amendment",
            "INSERT INTO amendment SELECT 99, record_id, field, old_journal, new_journal, 'because',"
                + " memo, bander, at FROM amendment LIMIT 1",
            "INSERT INTO amendment SELECT 99, record_id, field, old_journal, 999, reason, memo,"
                + " bander, at FROM amendment LIMIT 1",
            "INSERT INTO amendment SELECT 99, record_id, field, old_journal, new_journal, reason,"
                + " memo, '', at FROM amendment LIMIT 1")) {
      assertThatThrownBy(() -> Look.run(store, sql)).isInstanceOf(StoreException.class);
    }
  }

  private static NetEvent net(long id, NetEvent.What what, long second, Optional<Long> old) {
    return new NetEvent(id, "SP", what, Birds.later(second), Birds.later(second + 30), "QX", old);
  }

  @Test
  void whenNetsWereOpenIsKeptInTheOrderOfItsEntryAndNotTwice() {
    NetEvent opened = net(1, NetEvent.What.OPENED, 0, Optional.empty());
    NetEvent corrected = net(2, NetEvent.What.OPENED, -600, Optional.of(1L));
    NetEvent closed = net(3, NetEvent.What.CLOSED, 3600, Optional.empty());
    store.journalNets(List.of(opened));
    store.journalNets(List.of(opened, corrected));
    store.journalNets(List.of(closed));
    reopen();
    assertThat(store.netEvents()).containsExactly(opened, corrected, closed);
    for (String sql : List.of("UPDATE net_event SET net = '1'", "DELETE FROM net_event")) {
      assertThatThrownBy(() -> Look.run(store, sql)).isInstanceOf(StoreException.class);
    }
  }

  @Test
  void ofSeveralNetsAllAreStoredOrNone() {
    NetEvent good = net(1, NetEvent.What.OPENED, 0, Optional.empty());
    NetEvent bad = net(2, NetEvent.What.OPENED, 0, Optional.of(1L));
    NetEvent worse = net(3, NetEvent.What.OPENED, 0, Optional.of(1L));
    assertThatThrownBy(() -> store.journalNets(List.of(good, bad, worse)))
        .isInstanceOf(StoreException.class)
        .hasMessageStartingWith("When the nets were opened is not stored: ");
    assertThat(store.netEvents()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 8, 9, 10, 41})
  void aKilledProcessLeavesEachRecordAsSavedOrAsAmended(int lines) throws IOException {
    store.close();
    List<String> acknowledged;
    try (OtherProcess writer = OtherProcess.start(folder, natives, "amend")) {
      acknowledged = new java.util.ArrayList<>(writer.next(lines));
      acknowledged.addAll(writer.kill());
    }
    assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(lines).startsWith("open");
    store = new SqliteRecordStore(folder, natives);
    long done = acknowledged.stream().filter(l -> l.startsWith("amend")).count();
    long begun = acknowledged.stream().filter(l -> l.startsWith("begun")).count();
    String wing = store.asSaved(1).orElseThrow().value(FieldId.WING).orElseThrow().text();
    // the writer corrects the wing to 101, 102 and so on; one more may be stored and not told of
    assertThat(wing).isIn(done == 0 ? "92" : String.valueOf(100 + done), "" + (101 + done));
    assertThat(store.amendments(1).size()).isBetween((int) done, (int) done + 1);
    assertThat(store.original(1)).contains(FIRST);
    boolean isOpen = store.unfinished().isPresent();
    if (begun > done) {
      assertThat(isOpen || store.amendments(1).size() > done).isTrue();
    }
    store.unfinished().ifPresent(r -> store.withdraw(r.id(), Birds.later(900)));
    assertThat(store.asSaved(1).orElseThrow().value(FieldId.WING).orElseThrow().text())
        .isEqualTo(wing);
    assertThat(store.unfinished()).isEmpty();
    assertThat(Look.texts(store, "PRAGMA integrity_check")).containsExactly("ok");
  }
}
