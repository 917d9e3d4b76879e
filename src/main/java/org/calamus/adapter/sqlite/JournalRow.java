package org.calamus.adapter.sqlite;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Predicate;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Unit;

/**
 * A row of the journal as it is stored: text throughout, empty where a column does not apply.
 *
 * @param field the field
 * @param kind {@code band}, {@code code}, {@code measure} or {@code erased}
 * @param text the value with the digits as received
 * @param unit the symbol of the unit of a measure
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
        kindOf(value),
        value.text(),
        value instanceof FieldValue.Measure m ? m.unit().symbol() : "",
        entry.provenance().way().word(),
        entry.provenance().detail(),
        text(entry.at()),
        entry.confirmedRules());
  }

  /** The row for a field that was emptied. */
  static JournalRow erased(FieldId field, Instant at) {
    return new JournalRow(field, ERASED, "", "", "", "", text(at), List.of());
  }

  /** An instant as it is stored. What is finer than a millisecond is cut off. */
  static String text(Instant instant) {
    return MILLISECONDS.format(instant);
  }

  boolean isErased() {
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
    Provenance.Way how = named(Provenance.Way.values(), w -> w.word().equals(way));
    return Optional.of(
        new Entry(value(), new Provenance(how, detail), Instant.parse(at), confirmedRules));
  }

  private FieldValue value() {
    if (kind.equals("band")) {
      return BandNumber.ofOtherScheme(text).orElseThrow();
    }
    if (kind.equals("code")) {
      return new FieldValue.Code(text);
    }
    Unit measuredIn = named(Unit.values(), u -> u.symbol().equals(unit));
    return new FieldValue.Measure(new BigDecimal(text), measuredIn);
  }

  private static String kindOf(FieldValue value) {
    if (value instanceof BandNumber) {
      return "band";
    }
    if (value instanceof FieldValue.Code) {
      return "code";
    }
    if (value instanceof FieldValue.Measure) {
      return "measure";
    }
    throw new AssertionError(value);
  }

  private static <T> T named(T[] all, Predicate<T> wanted) {
    return Arrays.stream(all).filter(wanted).findFirst().orElseThrow(NoSuchElementException::new);
  }
}
