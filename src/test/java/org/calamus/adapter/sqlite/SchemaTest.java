package org.calamus.adapter.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.port.RecordStore.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SchemaTest {

  private static final String V1 = "/schema/V1__records.sql";
  private static final String V2 = "/schema/V2__more_kinds.sql";
  private static final String V3 = "/schema/V3__amendments_and_nets.sql";
  private static final String V4 = "/schema/V4__dates.sql";
  private static final Schema NEXT =
      new Schema(List.of(V1, V2, V3, V4, "/schema/V5__test_remark.sql"));

  @TempDir Path folder;
  @TempDir Path natives;

  @Test
  void currentListsEveryScriptOfTheFolder() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("src/main/resources/schema"))) {
      assertThat(files.map(f -> "/schema/" + f.getFileName()).sorted())
          .containsExactlyElementsOf(Schema.CURRENT.scripts());
    }
  }

  @Test
  void scriptsMakeTheColumnsThatTheCodeUses() {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      String columns =
          "SELECT m.name || '.' || c.name || ' ' || c.type FROM sqlite_schema m,"
              + " pragma_table_info(m.name) c WHERE m.type = 'table' ORDER BY m.name, c.cid";
      assertThat(Look.texts(store, columns))
          .containsExactly(
              "amendment.sequence INTEGER",
              "amendment.record_id INTEGER",
              "amendment.field TEXT",
              "amendment.old_journal INTEGER",
              "amendment.new_journal INTEGER",
              "amendment.reason TEXT",
              "amendment.memo TEXT",
              "amendment.bander TEXT",
              "amendment.at TEXT",
              "capture_record.id INTEGER",
              "capture_record.captured_at TEXT",
              "capture_record.place TEXT",
              "capture_record.bander TEXT",
              "confirmed_rule.sequence INTEGER",
              "confirmed_rule.position INTEGER",
              "confirmed_rule.rule TEXT",
              "journal.sequence INTEGER",
              "journal.record_id INTEGER",
              "journal.field TEXT",
              "journal.supersedes INTEGER",
              "journal.kind TEXT",
              "journal.text TEXT",
              "journal.unit TEXT",
              "journal.memo TEXT",
              "journal.way TEXT",
              "journal.detail TEXT",
              "journal.entered_at TEXT",
              "net_event.sequence INTEGER",
              "net_event.net TEXT",
              "net_event.what TEXT",
              "net_event.at TEXT",
              "net_event.entered_at TEXT",
              "net_event.bander TEXT",
              "net_event.supersedes INTEGER",
              "record_event.sequence INTEGER",
              "record_event.record_id INTEGER",
              "record_event.what TEXT",
              "record_event.at TEXT",
              "record_event.journal_sequence INTEGER");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE journal SET text = '93'",
        "DELETE FROM journal",
        "UPDATE capture_record SET place = 'elsewhere'",
        "DELETE FROM capture_record",
        "UPDATE record_event SET what = 'abandoned'",
        "DELETE FROM record_event",
        "UPDATE confirmed_rule SET rule = 'x'",
        "DELETE FROM confirmed_rule",
        "INSERT INTO journal SELECT 99, 77, field, null, kind, text, unit, memo, way, detail,"
            + " entered_at FROM journal LIMIT 1",
        "INSERT INTO journal SELECT 99, 1, field, 1, 'real', text, unit, memo, way, detail,"
            + " entered_at FROM journal LIMIT 1",
        "INSERT INTO journal SELECT 99, 1, field, 1, kind, text, unit, 'a.wav', way, detail,"
            + " entered_at FROM journal LIMIT 1",
        "INSERT INTO journal SELECT 99, 1, field, 1, 'note', '', '', '', way, detail, entered_at"
            + " FROM journal LIMIT 1",
        "INSERT INTO journal SELECT 99, 1, field, 1, 'code', '', '', '', way, detail, entered_at"
            + " FROM journal LIMIT 1",
        "INSERT INTO journal SELECT 99, 1, field, 1, 'erased', 'x', '', '', '', detail, entered_at"
            + " FROM journal LIMIT 1"
      })
  void tablesRefuseWhatIsNotAnAddition(String sql) {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      var doubted =
          new Entry(
              Birds.wing("92").value(),
              Birds.wing("92").provenance(),
              Birds.later(9),
              List.of("wing-range"));
      store.save(Birds.banded(1).with(FieldId.WING, doubted), Birds.later(60));
      assertThatThrownBy(() -> Look.run(store, sql))
          .isInstanceOf(StoreException.class)
          .hasRootCauseInstanceOf(SQLException.class)
          .rootCause()
          .hasMessageContaining("CONSTRAINT");
      assertThat(store.saved().get(0).entry(FieldId.WING)).contains(doubted);
    }
  }

  @Test
  void olderDatabaseIsBroughtUpWithItsRecords() {
    saveOne(Schema.CURRENT);
    try (SqliteRecordStore newer = new SqliteRecordStore(folder, natives, NEXT)) {
      assertThat(newer.saved()).containsExactly(Birds.banded(1));
      assertThat(Look.number(newer, "PRAGMA user_version")).isEqualTo(Schema.CURRENT.version() + 1);
      assertThat(Look.number(newer, "SELECT count(remark) FROM capture_record")).isEqualTo(1);
    }
  }

  @Test
  void olderDatabaseStaysAsItIsWhereAScriptFails() {
    saveOne(Schema.CURRENT);
    Schema broken = new Schema(List.of(V1, V2, V3, V4, "/schema/V5__test_broken.sql"));
    assertThatThrownBy(() -> new SqliteRecordStore(folder, natives, broken))
        .isInstanceOf(StoreException.class);
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives)) {
      assertThat(store.saved()).containsExactly(Birds.banded(1));
      assertThat(
              Look.number(
                  store,
                  "SELECT count(*) FROM pragma_table_info('capture_record')"
                      + " WHERE name = 'remark'"))
          .isZero();
    }
  }

  @Test
  void newerDatabaseIsRefusedUntouched() throws IOException {
    saveOne(NEXT);
    Path file = folder.resolve("calamus.db");
    Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-01-01T00:00:00Z")));
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> new SqliteRecordStore(folder, natives))
        .isInstanceOf(StoreException.class)
        .hasMessage(
            "The records cannot be opened: "
                + file
                + " has schema version 5 and this Calamus knows versions up to 4; start the newer"
                + " Calamus or give another folder with --data");
    assertThatThrownBy(() -> SqliteRecordStore.health(folder, natives))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("schema version 5");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    assertThat(Files.getLastModifiedTime(file).toInstant()).isEqualTo("2026-01-01T00:00:00Z");
    saveOne(NEXT);
  }

  @Test
  void databaseOfAnotherProgramIsRefusedUntouched() throws IOException, SQLException {
    saveOne(Schema.CURRENT);
    Path other = Files.createDirectory(folder.resolve("other"));
    Path file = other.resolve("calamus.db");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Sql.run(c, "CREATE TABLE song (title TEXT)");
    }
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> new SqliteRecordStore(other, natives))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining(file + " is a database of another program");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  private void saveOne(Schema schema) {
    try (SqliteRecordStore store = new SqliteRecordStore(folder, natives, schema)) {
      store.save(Birds.banded(1), Birds.later(60));
    }
  }
}
