package org.calamus.core.record;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Locale;
import java.util.StringJoiner;

/**
 * Numbers and codes in spoken words, digit by digit, as in radiotelephony.
 *
 * <p>Source: ICAO Annex 10, Volume II, 5.2.1.4: numbers are transmitted by pronouncing each digit
 * separately; Figure 5-1: the spelling alphabet. "Point" is used for the decimal sign, as in FAA
 * Aeronautical Information Manual 4-2-8.
 */
public final class Spoken {

  private static final String[] DIGITS = {
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"
  };

  private static final String[] LETTERS = {
    "alfa", "bravo", "charlie", "delta", "echo", "foxtrot", "golf", "hotel", "india", "juliett",
    "kilo", "lima", "mike", "november", "oscar", "papa", "quebec", "romeo", "sierra", "tango",
    "uniform", "victor", "whiskey", "x ray", "yankee", "zulu"
  };

  private Spoken() {}

  /** The number's digits, as received: 22.30 is "two two point three zero". */
  public static String number(BigDecimal amount) {
    return digits(amount.toPlainString());
  }

  /** Every digit of a text as a word; a point as "point", a leading minus as "minus". */
  public static String digits(String text) {
    StringJoiner words = new StringJoiner(" ");
    for (char c : text.toCharArray()) {
      if (c >= '0' && c <= '9') {
        words.add(DIGITS[c - '0']);
      } else if (c == '.') {
        words.add("point");
      } else if (c == '-' && words.length() == 0) {
        words.add("minus");
      }
    }
    return words.toString();
  }

  /**
   * Every digit of a text as a word, and every letter as its word of the spelling alphabet, without
   * hyphens: X12 is "x ray one two".
   */
  public static String characters(String text) {
    StringJoiner words = new StringJoiner(" ");
    for (char c : text.toUpperCase(Locale.ROOT).toCharArray()) {
      if (c >= '0' && c <= '9') {
        words.add(DIGITS[c - '0']);
      } else if (c >= 'A' && c <= 'Z') {
        words.add(LETTERS[c - 'A']);
      }
    }
    return words.toString();
  }

  /** A date as day, month and year: 2026-06-16 is "one six june two zero two six". */
  public static String date(LocalDate date) {
    return String.join(
        " ",
        digits(String.valueOf(date.getDayOfMonth())),
        name(date.getMonth().name()),
        digits(String.valueOf(date.getYear())));
  }

  /** A name as a voice should say it: lower case, hyphens as blanks. */
  public static String name(String name) {
    return name.toLowerCase(Locale.ROOT).replace('-', ' ');
  }
}
