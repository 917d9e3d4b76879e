package org.calamus.core.record;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What a field holds: a band number, a code or several, an amount, a time or day, or a note. */
public sealed interface FieldValue
    permits BandNumber,
        FieldValue.Code,
        FieldValue.Codes,
        FieldValue.Measure,
        FieldValue.TimeOfDay,
        FieldValue.Day,
        FieldValue.Note {

  /**
   * The value as it is shown and stored, without unit: {@code 2841-55601}, {@code WBNU}, {@code
   * 92}.
   */
  String text();

  /**
   * A code of the field's table.
   *
   * @param code the code, such as {@code WBNU} or {@code AHY}; never blank
   */
  record Code(String code) implements FieldValue {
    /** Checks that there is a code. */
    public Code {
      if (code.isBlank()) {
        throw new IllegalArgumentException("a code cannot be blank");
      }
    }

    @Override
    public String text() {
      return code;
    }
  }

  /**
   * A measured amount with the digits as received: 22.30 stays 22.30.
   *
   * @param amount the amount, never null
   * @param unit its unit, never null
   */
  record Measure(BigDecimal amount, Unit unit) implements FieldValue {
    /** Checks that both parts are there. */
    public Measure {
      Objects.requireNonNull(amount);
      Objects.requireNonNull(unit);
    }

    @Override
    public String text() {
      return amount.toPlainString();
    }
  }

  /**
   * Several codes of the field's table, in the order in which they were given.
   *
   * @param codes at least one; none blank, none twice
   */
  record Codes(List<String> codes) implements FieldValue {
    /** Copies the list and checks it. */
    public Codes {
      codes = List.copyOf(codes);
      boolean isClean = codes.stream().noneMatch(c -> c.isBlank() || c.indexOf(' ') >= 0);
      if (codes.isEmpty() || !isClean || codes.stream().distinct().count() != codes.size()) {
        throw new IllegalArgumentException("not one or more different codes: " + codes);
      }
    }

    /** The codes, parted by blanks. */
    @Override
    public String text() {
      return String.join(" ", codes);
    }
  }

  /**
   * A time as the clock at the station shows it. It is kept as it was read, since that is what a
   * scheme wants; the date and the instant are those of the record.
   *
   * @param time hour and minute
   */
  record TimeOfDay(LocalTime time) implements FieldValue {
    /** Drops what is smaller than a minute. */
    public TimeOfDay {
      time = time.truncatedTo(ChronoUnit.MINUTES);
    }

    /** Hour and minute: {@code 08:40}. */
    @Override
    public String text() {
      return time.toString();
    }
  }

  /**
   * A day of the station's calendar.
   *
   * @param date the day, never null
   */
  record Day(LocalDate date) implements FieldValue {
    /** Checks that there is a day. */
    public Day {
      Objects.requireNonNull(date);
    }

    /** Year, month and day, as in ISO 8601: {@code 2026-06-16}. */
    @Override
    public String text() {
      return date.toString();
    }
  }

  /**
   * Free remarks, written, spoken or both.
   *
   * @param written the text; empty where there is only a spoken memo
   * @param memo the name of the sound file beside the database; empty where there is none
   */
  record Note(String written, Optional<String> memo) implements FieldValue {
    /** Checks that there is one of the two. */
    public Note {
      written = written.strip();
      if (written.isEmpty() && memo.isEmpty()) {
        throw new IllegalArgumentException("a note without words and without sound");
      }
    }

    /** The written text; where there is none, the name of the sound file in brackets. */
    @Override
    public String text() {
      return written.isEmpty() ? "[" + memo.orElseThrow() + "]" : written;
    }
  }
}
