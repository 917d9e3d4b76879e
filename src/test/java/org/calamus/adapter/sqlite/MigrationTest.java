package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.port.RecordStore.StoreException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A database of version 1, made by its own script and filled in plain SQL, is brought up. */
@Timeout(60)
class MigrationTest {

  private static final String V1 = "/schema/V1__records.sql";

  /** Every column of the journal that version 1 had. */
  private static final String OLD_ROWS =
      "SELECT sequence || '|' || record_id || '|' || field || '|' || coalesce(supersedes, '-')"
          + " || '|' || kind || '|' || text || '|' || unit || '|' || way || '|' || detail || '|'"
          + " || entered_at FROM journal ORDER BY sequence";

  private static final Entry DOUBTED_MASS =
      new Entry(
          Birds.mass("22.30").value(),
          Birds.mass("22.30").provenance(),
          Birds.later(40),
          List.of("mass-range", "mass-for-species"));

  private static final CaptureRecord SAVED =
      Birds.banded(1)
          .with(FieldId.SPECIES, Birds.code("WBNU"))
          .with(FieldId.WING, Birds.wing("73"))
          .with(FieldId.MASS, DOUBTED_MASS);

  private static final CaptureRecord OPEN = Birds.banded(3);

  @TempDir Path folder;
  @TempDir Path natives;
  private Path file;
  private List<String> before;

  @BeforeEach
  void makeVersionOne() throws IOException, SQLException {
    NativeLibrary.unpackTo(natives);
    file = folder.resolve("calamus.db");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Sql.rows(c, row -> row.getString(1), "PRAGMA journal_mode = WAL");
      Sql.run(c, "PRAGMA foreign_keys = ON");
      try (InputStream script = MigrationTest.class.getResourceAsStream(V1)) {
        Sql.run(c, new String(script.readAllBytes(), StandardCharsets.UTF_8));
      }
      Sql.run(c, "PRAGMA application_id = " + Schema.APPLICATION_ID + "; PRAGMA user_version = 1");
      Sql.run(c, ROWS);
      before = Sql.rows(c, row -> row.getString(1), OLD_ROWS);
    }
    assertThat(before).hasSize(8);
  }

  private static final String ROWS =
      """
      INSERT INTO capture_record VALUES
        (1, '2026-05-03T04:11:00.250Z', 'Fenwick Marsh', 'QX'),
        (2, '2026-05-03T04:12:00.250Z', 'Fenwick Marsh', 'QX'),
        (3, '2026-05-03T04:13:00.250Z', 'Fenwick Marsh', 'QX');
      INSERT INTO journal VALUES
        (1, 1, 'BAND', null, 'band', '2841-51001', '', 'keyed', '2841-51001',
         '2026-05-03T04:10:05.250Z'),
        (2, 1, 'SPECIES', null, 'code', 'WBNU', '', 'said', 'code WBNU',
         '2026-05-03T04:10:12.250Z'),
        (3, 1, 'WING', null, 'measure', '92', 'mm', 'said', 'wing 92', '2026-05-03T04:10:12.250Z'),
        (4, 1, 'WING', 3, 'erased', '', '', '', '', '2026-05-03T04:10:13.250Z'),
        (5, 2, 'BAND', null, 'band', '2841-51002', '', 'keyed', '2841-51002',
         '2026-05-03T04:10:05.250Z'),
        (6, 1, 'WING', 4, 'measure', '73', 'mm', 'said', 'wing 73', '2026-05-03T04:10:12.250Z'),
        (7, 1, 'MASS', null, 'measure', '22.30', 'g', 'measured', 'balance: S S 22.30 g',
         '2026-05-03T04:10:40.250Z'),
        (9, 3, 'BAND', null, 'band', '2841-51003', '', 'keyed', '2841-51003',
         '2026-05-03T04:10:05.250Z');
      INSERT INTO confirmed_rule VALUES (7, 0, 'mass-range'), (7, 1, 'mass-for-species');
      INSERT INTO record_event VALUES
        (1, 1, 'saved', '2026-05-03T04:11:10.250Z', 3),
        (2, 2, 'abandoned', '2026-05-03T04:12:10.250Z', 5),
        (3, 1, 'reopened', '2026-05-03T04:12:20.250Z', 3),
        (4, 1, 'saved', '2026-05-03T04:12:30.250Z', 7);
      """;

  @Test
  void openingBringsUpAndKeepsEveryRowAndRecord() {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      assertThat(Look.number(store, "PRAGMA user_version")).isEqualTo(Schema.CURRENT.version());
      assertThat(Look.texts(store, OLD_ROWS)).isEqualTo(before);
      assertThat(Look.texts(store, "SELECT sequence || rule FROM confirmed_rule"))
          .containsExactly("7mass-range", "7mass-for-species");
      assertThat(Look.texts(store, "SELECT what FROM record_event"))
          .containsExactly("saved", "abandoned", "reopened", "saved");
      assertThat(Look.texts(store, "SELECT DISTINCT memo FROM journal")).containsExactly("");
      assertThat(store.saved()).containsExactly(SAVED);
      assertThat(store.unfinished()).contains(OPEN);
      assertThat(store.nextRecordId()).isEqualTo(4);
      assertThat(Look.texts(store, "PRAGMA integrity_check")).containsExactly("ok");
    }
  }

  @Test
  void versionTwoIsBroughtUpAndItsEventsStayInTheirOrder() {
    String events =
        "SELECT sequence || '|' || record_id || '|' || what || '|' || at || '|' || journal_sequence"
            + " FROM record_event ORDER BY sequence";
    Schema two = new Schema(Schema.CURRENT.scripts().subList(0, 2));
    List<String> old;
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives, two)) {
      assertThat(Look.number(store, "PRAGMA user_version")).isEqualTo(2);
      old = Look.texts(store, events);
      assertThat(old).hasSize(4);
    }
    openingBringsUpAndKeepsEveryRowAndRecord();
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      assertThat(Look.texts(store, events)).isEqualTo(old);
      assertThatThrownBy(() -> Look.run(store, "DELETE FROM record_event"))
          .isInstanceOf(StoreException.class);
      CaptureRecord corrected = SAVED.with(FieldId.WING, Birds.wing("74"));
      store.journal(corrected, FieldId.WING, Birds.wing("74"));
      store.withdraw(1, Birds.later(90));
      assertThat(store.saved()).containsExactly(SAVED);
      Amendment.Why why = new Amendment.Why(Amendment.Reason.MISHEARD, Optional.empty(), "QX");
      store.amend(corrected, why, List.of(), Birds.later(99));
      assertThat(store.saved()).containsExactly(corrected);
      assertThat(store.amendments(1)).hasSize(1);
    }
  }

  @Test
  void versionThreeIsBroughtUpAndItsCorrectionsStay() {
    Schema three = new Schema(Schema.CURRENT.scripts().subList(0, 3));
    CaptureRecord corrected = SAVED.with(FieldId.WING, Birds.wing("74"));
    Amendment.Why why = new Amendment.Why(Amendment.Reason.MISHEARD, Optional.empty(), "QX");
    List<Amendment> amendments;
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives, three)) {
      store.journal(corrected, FieldId.WING, Birds.wing("74"));
      store.amend(corrected, why, List.of(), Birds.later(99));
      amendments = store.amendments(1);
      assertThat(amendments).hasSize(1);
    }
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      assertThat(store.saved()).containsExactly(corrected);
      assertThat(store.amendments(1)).isEqualTo(amendments);
      Entry day = Birds.keyed(new FieldValue.Day(LocalDate.of(2026, 5, 2)));
      CaptureRecord dated = corrected.with(FieldId.DATE, day);
      store.journal(dated, FieldId.DATE, day);
      store.amend(dated, why, List.of(), Birds.later(100));
      assertThat(store.saved()).containsExactly(dated);
      assertThat(store.pastCaptures().get(0).day(ZoneOffset.UTC)).isEqualTo("2026-05-02");
    }
  }

  @Test
  void openingAgainChangesNothing() {
    new SqliteRecordStore(folder, natives).close();
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      assertThat(Look.texts(store, OLD_ROWS)).isEqualTo(before);
      assertThat(store.saved()).containsExactly(SAVED);
    }
  }

  @Test
  void broughtUpTablesAreThoseOfANewDatabase() throws IOException {
    String made = "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema";
    try (SqliteRecordStore old = new SqliteRecordStore(folder, natives);
        SqliteRecordStore fresh =
            new SqliteRecordStore(Files.createDirectory(folder.resolve("new")), natives)) {
      assertThat(Look.texts(old, made)).isEqualTo(Look.texts(fresh, made));
      assertThat(Look.texts(old, made))
          .noneMatch(line -> line.contains("journal_v") || line.contains("record_event_v3"))
          .anyMatch(line -> line.startsWith("index record_event_by_record"))
          .anyMatch(line -> line.startsWith("trigger record_event_is_never_changed"))
          .anyMatch(line -> line.startsWith("trigger record_event_is_never_deleted"))
          .anyMatch(line -> line.startsWith("index journal_by_field"))
          .anyMatch(line -> line.startsWith("trigger journal_is_never_changed"))
          .anyMatch(line -> line.startsWith("trigger journal_is_never_deleted"));
    }
  }

  @Test
  void broughtUpStoreTakesTheNewKindsAndEnforcesWhatRefersToTheJournal() {
    Entry note =
        new Entry(
            new FieldValue.Note("left eye", Optional.of("3-1.wav")),
            new Provenance(Provenance.Way.SAID, "note"),
            Birds.later(50),
            List.of("odd"));
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      store.save(OPEN.with(FieldId.NOTE, note), Birds.later(60));
      assertThat(store.saved()).containsExactly(SAVED, OPEN.with(FieldId.NOTE, note));
      for (String sql :
          List.of(
              "INSERT INTO confirmed_rule VALUES (77, 0, 'x')",
              "UPDATE journal SET text = 'x'",
              "DELETE FROM journal",
              "INSERT INTO journal SELECT 99, 1, field, 77, kind, text, unit, memo, way, detail,"
                  + " entered_at FROM journal LIMIT 1")) {
        assertThatThrownBy(() -> Look.run(store, sql)).isInstanceOf(StoreException.class);
      }
    }
  }

  @Test
  void versionOneStaysWholeWhereTheProcessIsKilledInMidMigration() throws Exception {
    Path log = folder.resolve("calamus.db-wal");
    try (WatchService watch = FileSystems.getDefault().newWatchService()) {
      folder.register(
          watch, StandardWatchEventKinds.ENTRY_CREATE, StandardWatchEventKinds.ENTRY_MODIFY);
      try (OtherProcess migrating = OtherProcess.start(folder, natives, "migrate for ever")) {
        // the first version's script is done by then, and part of the endless one is in the log
        while (!Files.exists(log) || Files.size(log) < 1_000_000) {
          WatchKey changed = watch.poll(20, TimeUnit.SECONDS);
          assertThat(changed).as("the log grows").isNotNull();
          changed.pollEvents();
          changed.reset();
        }
        assertThat(migrating.kill()).isEmpty();
      }
    }
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      assertThat(Sql.number(c, "PRAGMA user_version")).isEqualTo(1);
      assertThat(Sql.rows(c, row -> row.getString(1), OLD_ROWS)).isEqualTo(before);
    }
    openingBringsUpAndKeepsEveryRowAndRecord();
  }

  @Test
  void databaseWithRowsThatReferToNothingIsLeftAsItIs() throws SQLException {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Sql.run(c, "PRAGMA foreign_keys = OFF; INSERT INTO confirmed_rule VALUES (77, 0, 'x')");
    }
    assertThatThrownBy(() -> new SqliteRecordStore(folder, natives))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining(file + " is damaged");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      assertThat(Sql.number(c, "PRAGMA user_version")).isEqualTo(1);
      assertThat(Sql.rows(c, row -> row.getString(1), OLD_ROWS)).isEqualTo(before);
    }
  }

  @Test
  void healthLooksAtVersionOneWithoutBringingItUp() throws SQLException {
    assertThat(SqliteRecordStore.health(folder, natives))
        .startsWith("1 saved, 1 unfinished; schema version 1;");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      assertThat(Sql.number(c, "PRAGMA user_version")).isEqualTo(1);
    }
  }
}
