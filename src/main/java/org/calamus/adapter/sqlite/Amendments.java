package org.calamus.adapter.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;

/** Adds and reads what corrections changed in saved records. */
final class Amendments {

  private final Connection connection;
  private final History history;

  Amendments(Connection connection) {
    this.connection = connection;
    this.history = new History(connection);
  }

  /**
   * Adds a row for each field in which the journal of a record goes beyond the record as it was
   * saved last. Called when the journal holds the corrected record and its saving is not entered.
   */
  void add(long id, Amendment.Why why, Instant at) throws SQLException {
    long through =
        history
            .savedThrough(id)
            .orElseThrow(() -> new IllegalStateException("record " + id + " was never saved"));
    CaptureRecord before = history.saved(id).orElseThrow();
    Map<FieldId, JournalRow> after = history.current(id);
    Map<FieldId, Long> oldRows = history.lastRows(id, through);
    Map<FieldId, Long> newRows = history.lastRows(id, Long.MAX_VALUE);
    for (Map.Entry<FieldId, Long> row : newRows.entrySet()) {
      FieldId field = row.getKey();
      Optional<JournalRow> was = before.entry(field).map(e -> JournalRow.of(field, e));
      if (!was.equals(Optional.ofNullable(after.get(field)))) {
        Sql.insert(
            connection,
            "INSERT INTO amendment (record_id, field, old_journal, new_journal, reason, memo,"
                + " bander, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            id,
            field.name(),
            was.isPresent() ? oldRows.get(field) : null,
            row.getValue(),
            why.reason().key(),
            why.memo().orElse(""),
            why.bander(),
            JournalRow.text(at));
      }
    }
  }

  /** Those of a record, oldest first. */
  List<Amendment> of(long id) throws SQLException {
    List<Amendment> all = new ArrayList<>();
    for (Row row :
        Sql.rows(
            connection,
            r ->
                new Row(
                    FieldId.valueOf(r.getString(1)),
                    r.getLong(2),
                    r.getLong(3),
                    new Amendment.Why(
                        Amendment.Reason.ofKey(r.getString(4)).orElseThrow(),
                        Optional.of(r.getString(5)).filter(m -> !m.isEmpty()),
                        r.getString(6)),
                    Instant.parse(r.getString(7))),
            "SELECT field, coalesce(old_journal, 0), new_journal, reason, memo, bander, at"
                + " FROM amendment WHERE record_id = ? ORDER BY sequence",
            id)) {
      all.add(
          new Amendment(id, row.field, entry(id, row.old), entry(id, row.now), row.why, row.at));
    }
    return List.copyOf(all);
  }

  private Optional<Entry> entry(long id, long sequence) throws SQLException {
    return history.row(id, sequence).flatMap(JournalRow::entry);
  }

  private record Row(FieldId field, long old, long now, Amendment.Why why, Instant at) {
    Row {
      Objects.requireNonNull(why);
    }
  }
}
