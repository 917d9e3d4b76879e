package org.calamus.core.form;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A field of an EURING record, and how one value is written into it.
 *
 * @param name the field's name, such as {@code identification number}
 * @param length its length in characters; 0 where a value is as long as it is
 * @param kind what stands in it
 * @param step the finest step of an amount; empty for every other kind
 * @param unknown what stands where nothing is known; may be empty
 */
public record EuringField(
    String name, int length, Kind kind, Optional<BigDecimal> step, String unknown) {

  private static final Pattern RING = Pattern.compile("([A-Z0-9]*?)(\\d*)");

  /** Checks that the parts are there. */
  public EuringField {
    Objects.requireNonNull(name);
    Objects.requireNonNull(kind);
    Objects.requireNonNull(step);
    Objects.requireNonNull(unknown);
  }

  /** What stands in a field. */
  public enum Kind {
    /** Capital letters and dashes, as many as the field is long. */
    LETTERS,
    /** Digits, with zeros before them. */
    DIGITS,
    /** Any characters but the bar, as many as the field is long. */
    CHARACTERS,
    /** A ring number: letters to the left, digits to the right, dots between. */
    RING,
    /** A date, as day, month and year without marks between. */
    DATE,
    /** A time, as hour and minute without a mark between. */
    TIME,
    /** An amount, rounded to the field's step. */
    AMOUNT,
    /** A text without bars and line ends. */
    TEXT;

    /** The kind of a name in lower case. */
    public static Optional<Kind> named(String name) {
      return Arrays.stream(values())
          .filter(k -> k.name().toLowerCase(Locale.ROOT).equals(name))
          .findFirst();
    }
  }

  /**
   * A value as it stands in the field.
   *
   * @param value as shown and stored; a date as {@code 2006-08-11}, a time as {@code 08:40}; where
   *     it is blank, what stands for nothing known
   * @return empty where the value does not fit the field
   */
  public Optional<String> format(String value) {
    String text = value.strip();
    return text.isEmpty() ? Optional.of(unknown) : formatted(text);
  }

  private Optional<String> formatted(String text) {
    String capitals = text.toUpperCase(Locale.ROOT);
    switch (kind) {
      case LETTERS:
        return Optional.of(capitals).filter(t -> t.matches("[A-Z-]+") && isAsLong(t));
      case DIGITS:
        return text.matches("\\d+") && text.length() <= length
            ? Optional.of("0".repeat(length - text.length()) + text)
            : Optional.empty();
      case CHARACTERS:
        return Optional.of(text).filter(t -> t.indexOf('|') < 0 && isAsLong(t));
      case RING:
        return ring(capitals);
      case DATE:
        return date(text);
      case TIME:
        return time(text);
      case AMOUNT:
        return amount(text);
      case TEXT:
        return Optional.of(text.replaceAll("[|\\r\\n]+", " "));
      default:
        throw new AssertionError(kind);
    }
  }

  private boolean isAsLong(String text) {
    return text.length() == length;
  }

  private Optional<String> ring(String capitals) {
    String number = capitals.replaceAll("[\\s.-]", "");
    Matcher parts = RING.matcher(number);
    return parts.matches() && !number.isEmpty() && number.length() <= length
        ? Optional.of(parts.group(1) + ".".repeat(length - number.length()) + parts.group(2))
        : Optional.empty();
  }

  private static Optional<String> date(String text) {
    try {
      return Optional.of(
          DateTimeFormatter.ofPattern("ddMMyyyy", Locale.ROOT).format(LocalDate.parse(text)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<String> time(String text) {
    try {
      return Optional.of(
          DateTimeFormatter.ofPattern("HHmm", Locale.ROOT).format(LocalTime.parse(text)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private Optional<String> amount(String text) {
    if (!text.matches("\\d+(\\.\\d+)?")) {
      return Optional.empty();
    }
    BigDecimal amount = new BigDecimal(text);
    BigDecimal rounded =
        step.map(s -> amount.divide(s, 0, RoundingMode.HALF_UP).multiply(s)).orElse(amount);
    return Optional.of(rounded.stripTrailingZeros().toPlainString());
  }
}
