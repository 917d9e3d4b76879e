package org.calamus.adapter.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;

/**
 * Reads and adds to the history of records: all SQL about them is here, but for {@link
 * PastReading}.
 */
final class History {

  /** What became of a record last, as stored. */
  enum Event {
    SAVED("saved"),
    ABANDONED("abandoned"),
    REOPENED("reopened"),
    WITHDRAWN("withdrawn");

    private final String word;

    Event(String word) {
      this.word = word;
    }
  }

  private static final long EVERYTHING = Long.MAX_VALUE;

  private static final String JOURNAL =
      "SELECT j.record_id, j.sequence, field, kind, text, unit, memo, way, detail, entered_at,"
          + " rule"
          + " FROM journal j LEFT JOIN confirmed_rule c ON c.sequence = j.sequence";

  private static final String OPEN =
      "coalesce((SELECT what FROM record_event WHERE record_id = r.id"
          + " ORDER BY sequence DESC LIMIT 1), 'reopened') = 'reopened'";

  private static final String HEAD =
      "SELECT r.id, r.captured_at, r.place, r.bander, e.journal_sequence";

  private static final String FROM_SAVED =
      " FROM record_event e JOIN capture_record r ON r.id = e.record_id WHERE e.what = 'saved'"
          + " AND NOT EXISTS (SELECT 1 FROM record_event later WHERE later.record_id = e.record_id"
          + " AND later.sequence > e.sequence AND later.what IN ('saved', 'abandoned'))";

  private final Connection connection;

  History(Connection connection) {
    this.connection = connection;
  }

  /** One above the highest number ever begun. */
  long nextId() throws SQLException {
    return Sql.number(connection, "SELECT coalesce(max(id), 0) + 1 FROM capture_record");
  }

  /** The time at which a record was begun, as stored, or empty where it never was. */
  Optional<String> begunAt(long id) throws SQLException {
    return Sql.rows(
            connection,
            row -> row.getString(1),
            "SELECT captured_at FROM capture_record WHERE id = ?",
            id)
        .stream()
        .findFirst();
  }

  void begin(CaptureRecord record) throws SQLException {
    Sql.insert(
        connection,
        "INSERT INTO capture_record (id, captured_at, place, bander) VALUES (?, ?, ?, ?)",
        record.id(),
        JournalRow.text(record.capturedAt()),
        record.place(),
        record.bander());
  }

  /**
   * Adds a row to the journal; it supersedes the last one of its record and field, if any. Tells
   * its sequence number.
   */
  long append(long id, JournalRow row) throws SQLException {
    long sequence =
        Sql.insert(
            connection,
            "INSERT INTO journal (record_id, field, supersedes, kind, text, unit, memo, way,"
                + " detail, entered_at) VALUES (?1, ?2, (SELECT max(sequence) FROM journal"
                + " WHERE record_id = ?1 AND field = ?2), ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
            id,
            row.field().name(),
            row.kind(),
            row.text(),
            row.unit(),
            row.memo(),
            row.way(),
            row.detail(),
            row.at());
    int position = 0;
    for (String rule : row.confirmedRules()) {
      Sql.insert(
          connection,
          "INSERT INTO confirmed_rule (sequence, position, rule) VALUES (?, ?, ?)",
          sequence,
          position++,
          rule);
    }
    return sequence;
  }

  /** Adds what became of a record, with everything that is in its journal now. */
  void add(long id, Event event, Instant at) throws SQLException {
    Sql.insert(
        connection,
        "INSERT INTO record_event (record_id, what, at, journal_sequence) VALUES (?1, ?2, ?3,"
            + " (SELECT coalesce(max(sequence), 0) FROM journal WHERE record_id = ?1))",
        id,
        event.word,
        JournalRow.text(at));
  }

  /** Whether the last thing that became of the record is this. */
  boolean isLast(Event event, long id) throws SQLException {
    return Sql.rows(
            connection,
            row -> row.getString(1),
            "SELECT what FROM record_event WHERE record_id = ? ORDER BY sequence DESC LIMIT 1",
            id)
        .contains(event.word);
  }

  /** The last row of every field of a record that holds a value now. */
  Map<FieldId, JournalRow> current(long id) throws SQLException {
    return current(journal(id), EVERYTHING);
  }

  /** The newest record that was neither saved nor abandoned. */
  Optional<CaptureRecord> newestOpen() throws SQLException {
    return filled(
        heads(
            "SELECT r.id, r.captured_at, r.place, r.bander, "
                + EVERYTHING
                + " FROM capture_record r WHERE "
                + OPEN
                + " ORDER BY r.id DESC LIMIT 1"));
  }

  /** The saved records, each as it was when it was saved last, in the order of their first save. */
  List<CaptureRecord> saved() throws SQLException {
    List<Head> heads = savedHeads();
    Map<Long, Map<Long, JournalRow>> journals =
        journals(JOURNAL + " ORDER BY j.sequence, c.position");
    return heads.stream()
        .map(head -> filled(head, journals.getOrDefault(head.empty().id(), Map.of())))
        .toList();
  }

  /** The record as it was saved last; empty where it was never saved, or abandoned later. */
  Optional<CaptureRecord> saved(long id) throws SQLException {
    return filled(heads(HEAD + FROM_SAVED + " AND r.id = ?", id));
  }

  /** The record as it was saved first; empty where it never was. */
  Optional<CaptureRecord> savedFirst(long id) throws SQLException {
    return filled(
        heads(
            HEAD
                + " FROM record_event e JOIN capture_record r ON r.id = e.record_id"
                + " WHERE e.what = 'saved' AND r.id = ? ORDER BY e.sequence LIMIT 1",
            id));
  }

  private Optional<CaptureRecord> filled(List<Head> heads) throws SQLException {
    return heads.isEmpty()
        ? Optional.empty()
        : Optional.of(filled(heads.get(0), journal(heads.get(0).empty().id())));
  }

  /** The sequence number of the last row of every field of a record, up to one that counts. */
  Map<FieldId, Long> lastRows(long id, long through) throws SQLException {
    Map<FieldId, Long> last = new EnumMap<>(FieldId.class);
    journal(id)
        .forEach(
            (sequence, row) -> {
              if (sequence <= through) {
                last.put(row.field(), sequence);
              }
            });
    return last;
  }

  /** The last row of the journal that the record as it was saved last covers. */
  Optional<Long> savedThrough(long id) throws SQLException {
    return heads(HEAD + FROM_SAVED + " AND r.id = ?", id).stream().map(Head::through).findFirst();
  }

  /** A row of the journal of a record; empty where there is no such row. */
  Optional<JournalRow> row(long id, long sequence) throws SQLException {
    return Optional.ofNullable(journal(id).get(sequence));
  }

  /** The saved records without their values, in the order of their first save. */
  List<Head> savedHeads() throws SQLException {
    return heads(
        HEAD
            + FROM_SAVED
            + " ORDER BY (SELECT min(sequence) FROM record_event"
            + " WHERE record_id = r.id AND what = 'saved')");
  }

  /** How many records were saved and not abandoned later. */
  long countSaved() throws SQLException {
    return Sql.number(connection, "SELECT count(*)" + FROM_SAVED);
  }

  /** How many records are open. */
  long countOpen() throws SQLException {
    return Sql.number(connection, "SELECT count(*) FROM capture_record r WHERE " + OPEN);
  }

  /**
   * A record without its values.
   *
   * @param empty the record
   * @param through the last sequence number of the journal that counts for it
   */
  record Head(CaptureRecord empty, long through) {}

  private List<Head> heads(String sql, Object... parameters) throws SQLException {
    return Sql.rows(
        connection,
        row ->
            new Head(
                new CaptureRecord(
                    row.getLong(1),
                    Instant.parse(row.getString(2)),
                    row.getString(3),
                    row.getString(4),
                    Map.of()),
                row.getLong(5)),
        sql,
        parameters);
  }

  private static CaptureRecord filled(Head head, Map<Long, JournalRow> rows) {
    CaptureRecord empty = head.empty();
    Map<FieldId, Entry> entries = new EnumMap<>(FieldId.class);
    current(rows, head.through())
        .forEach((field, row) -> row.entry().ifPresent(entry -> entries.put(field, entry)));
    return new CaptureRecord(
        empty.id(), empty.capturedAt(), empty.place(), empty.bander(), entries);
  }

  /** The last of the rows of every field that holds a value after the given sequence number. */
  private static Map<FieldId, JournalRow> current(Map<Long, JournalRow> rows, long through) {
    Map<FieldId, JournalRow> byField = new EnumMap<>(FieldId.class);
    rows.forEach(
        (sequence, row) -> {
          if (sequence <= through) {
            byField.put(row.field(), row);
          }
        });
    byField.values().removeIf(JournalRow::isErased);
    return byField;
  }

  /** The journal of one record by sequence. */
  private Map<Long, JournalRow> journal(long id) throws SQLException {
    return journals(JOURNAL + " WHERE j.record_id = ? ORDER BY j.sequence, c.position", id)
        .getOrDefault(id, Map.of());
  }

  /** The journals by record and sequence. */
  private Map<Long, Map<Long, JournalRow>> journals(String sql, Object... parameters)
      throws SQLException {
    Map<Long, Map<Long, JournalRow>> byRecord = new HashMap<>();
    // a row comes once for each of its rules
    Sql.rows(
        connection,
        row ->
            byRecord
                .computeIfAbsent(row.getLong(1), id -> new LinkedHashMap<>())
                .merge(row.getLong(2), journalRow(row), History::joined),
        sql,
        parameters);
    return byRecord;
  }

  private static JournalRow journalRow(ResultSet row) throws SQLException {
    return new JournalRow(
        FieldId.valueOf(row.getString(3)),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        row.getString(7),
        row.getString(8),
        row.getString(9),
        row.getString(10),
        Optional.ofNullable(row.getString(11)).map(List::of).orElse(List.of()));
  }

  private static JournalRow joined(JournalRow all, JournalRow next) {
    List<String> rules = new ArrayList<>(all.confirmedRules());
    rules.addAll(next.confirmedRules());
    return new JournalRow(
        all.field(),
        all.kind(),
        all.text(),
        all.unit(),
        all.memo(),
        all.way(),
        all.detail(),
        all.at(),
        rules);
  }
}
