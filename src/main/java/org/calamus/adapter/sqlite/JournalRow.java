package org.calamus.adapter.sqlite;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;

/**
 * A row of the journal as it is stored: text throughout, empty where a column does not apply.
 *
 * @param field the field
 * @param kind which kind of value, or {@code erased}
 * @param text the value with the digits as received; of a note what is written
 * @param unit the symbol of the unit of a measure
 * @param memo the name of the sound file of a note
 * @param way the word of the way in
 * @param detail the detail of the provenance
 * @param at when it was entered, UTC, ISO 8601 with milliseconds
 * @param confirmedRules ids of the overruled rules
 */
record JournalRow(
    FieldId field,
    String kind,
    String text,
    String unit,
    String memo,
    String way,
    String detail,
    String at,
    List<String> confirmedRules) {

  private static final String ERASED = "erased";
  private static final DateTimeFormatter MILLISECONDS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter(Locale.ROOT);

  JournalRow {
    confirmedRules = List.copyOf(confirmedRules);
  }

  /** The row for a value accepted into a field. */
  static JournalRow of(FieldId field, Entry entry) {
    FieldValue value = entry.value();
    return new JournalRow(
        field,
        StoredValue.kindOf(value),
        value instanceof FieldValue.Note note ? note.written() : value.text(),
        value instanceof FieldValue.Measure m ? m.unit().symbol() : "",
        value instanceof FieldValue.Note note ? note.memo().orElse("") : "",
        entry.provenance().way().word(),
        entry.provenance().detail(),
        text(entry.at()),
        entry.confirmedRules());
  }

  /** The row for a field that was emptied. */
  static JournalRow erased(FieldId field, Instant at) {
    return new JournalRow(field, ERASED, "", "", "", "", "", text(at), List.of());
  }

  /** An instant as it is stored. What is finer than a millisecond is cut off. */
  static String text(Instant instant) {
    return MILLISECONDS.format(instant);
  }

  boolean isErased() {
    return isErased(kind);
  }

  /** Whether a row of this kind says that the field was emptied. */
  static boolean isErased(String kind) {
    return kind.equals(ERASED);
  }

  /**
   * The entry that the row holds, or empty where the field was emptied.
   *
   * @throws RuntimeException of the JDK's parsers where the columns hold what Calamus never wrote
   */
  Optional<Entry> entry() {
    if (isErased()) {
      return Optional.empty();
    }
    Provenance.Way how =
        Arrays.stream(Provenance.Way.values())
            .filter(w -> w.word().equals(way))
            .findFirst()
            .orElseThrow();
    return Optional.of(
        new Entry(
            StoredValue.read(kind, text, unit, memo),
            new Provenance(how, detail),
            Instant.parse(at),
            confirmedRules));
  }
}
