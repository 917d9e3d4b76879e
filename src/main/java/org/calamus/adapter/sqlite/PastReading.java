package org.calamus.adapter.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;

/**
 * Reads the saved records without their provenance. The journal is gone through once, and of values
 * that are the same, as most codes and measures of a season are, one is kept for all.
 */
final class PastReading {

  private static final String BETWEEN_PATTERN = "\\|";

  private final Connection connection;
  private final Map<String, Content> contents = new HashMap<>();
  private final Map<String, String> words = new HashMap<>();
  private final Set<Long> confirmed = new HashSet<>();
  private final Map<Long, Draft> drafts = new HashMap<>();

  PastReading(Connection connection) {
    this.connection = connection;
  }

  /** All saved records, each as it was when it was saved last, in the order of their first save. */
  List<PastCapture> all() throws SQLException {
    List<History.Head> heads = new History(connection).savedHeads();
    heads.forEach(head -> drafts.put(head.empty().id(), new Draft(head.through())));
    Sql.each(
        connection,
        row -> confirmed.add(row.getLong(1)),
        "SELECT DISTINCT sequence FROM confirmed_rule");
    Sql.each(
        connection,
        this::take,
        // one text instead of four, since each costs as much as the row itself
        "SELECT record_id, sequence, field || '|' || kind || '|' || unit || '|' || text, memo"
            + " FROM journal ORDER BY sequence");
    List<PastCapture> all = new ArrayList<>(heads.size());
    heads.forEach(head -> all.add(capture(head.empty())));
    return all;
  }

  private void take(ResultSet row) throws SQLException {
    Draft draft = drafts.get(row.getLong(1));
    long sequence = row.getLong(2);
    if (draft == null || sequence > draft.through) {
      return;
    }
    Content content = content(row);
    draft.doubted.remove(content.field());
    if (content.value().isEmpty()) {
      draft.values.remove(content.field());
      return;
    }
    draft.values.put(content.field(), content.value().get());
    if (confirmed.contains(sequence)) {
      draft.doubted.add(content.field());
    }
  }

  private Content content(ResultSet row) throws SQLException {
    String columns = row.getString(3);
    Content known = contents.get(columns);
    if (known != null) {
      return known;
    }
    // the last of them, the value itself, may hold the sign between them
    String[] column = columns.split(BETWEEN_PATTERN, 4);
    FieldId field = FieldId.valueOf(column[0]);
    String kind = column[1];
    if (JournalRow.isErased(kind)) {
      return new Content(field, Optional.empty());
    }
    FieldValue value = StoredValue.read(kind, column[3], column[2], row.getString(4));
    Content content = new Content(field, Optional.of(value));
    if (isShared(value)) {
      contents.put(columns, content);
    }
    return content;
  }

  /** Notes are not told apart by these columns alone, and of bands no two are the same. */
  private static boolean isShared(FieldValue value) {
    return !(value instanceof FieldValue.Note || value instanceof BandNumber);
  }

  private PastCapture capture(CaptureRecord empty) {
    Draft draft = drafts.remove(empty.id());
    return new PastCapture(
        empty.id(),
        empty.capturedAt(),
        words.computeIfAbsent(empty.place(), same -> same),
        words.computeIfAbsent(empty.bander(), same -> same),
        draft.values,
        draft.doubted);
  }

  /**
   * What a row of the journal says.
   *
   * @param field the field
   * @param value what it holds; empty where it was emptied
   */
  private record Content(FieldId field, Optional<FieldValue> value) {}

  /** What has been read of a record so far. */
  private static final class Draft {
    private final long through;
    private final Map<FieldId, FieldValue> values = new EnumMap<>(FieldId.class);
    private final Set<FieldId> doubted = EnumSet.noneOf(FieldId.class);

    private Draft(long through) {
      this.through = through;
    }
  }
}
