package org.calamus.adapter.sqlite;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Unit;

/** How the kinds of value stand in the columns of the journal. */
final class StoredValue {

  private static final String BAND = "band";
  private static final String CODE = "code";
  private static final String CODES = "codes";
  private static final String MEASURE = "measure";
  private static final String TIME = "time";
  private static final String DATE = "date";
  private static final String NOTE = "note";

  private StoredValue() {}

  /** The word of a value's kind in the column {@code kind}. */
  static String kindOf(FieldValue value) {
    if (value instanceof BandNumber) {
      return BAND;
    }
    if (value instanceof FieldValue.Code) {
      return CODE;
    }
    if (value instanceof FieldValue.Codes) {
      return CODES;
    }
    if (value instanceof FieldValue.Measure) {
      return MEASURE;
    }
    if (value instanceof FieldValue.TimeOfDay) {
      return TIME;
    }
    if (value instanceof FieldValue.Day) {
      return DATE;
    }
    if (value instanceof FieldValue.Note) {
      return NOTE;
    }
    throw new AssertionError(value);
  }

  /**
   * The value of the columns.
   *
   * @throws RuntimeException of the JDK's parsers where the columns hold what Calamus never wrote
   */
  static FieldValue read(String kind, String text, String unit, String memo) {
    return switch (kind) {
      case BAND -> BandNumber.ofOtherScheme(text).orElseThrow();
      case CODE -> new FieldValue.Code(text);
      case CODES -> new FieldValue.Codes(List.of(text.split(" ")));
      case MEASURE -> new FieldValue.Measure(new BigDecimal(text), unit(unit));
      case TIME -> new FieldValue.TimeOfDay(LocalTime.parse(text));
      case DATE -> new FieldValue.Day(LocalDate.parse(text));
      case NOTE -> new FieldValue.Note(text, memo.isEmpty() ? Optional.empty() : Optional.of(memo));
      default -> throw new IllegalArgumentException("no kind of value: " + kind);
    };
  }

  private static Unit unit(String symbol) {
    return Arrays.stream(Unit.values())
        .filter(u -> u.symbol().equals(symbol))
        .findFirst()
        .orElseThrow();
  }
}
