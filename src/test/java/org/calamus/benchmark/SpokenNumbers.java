package org.calamus.benchmark;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;

/** Says numbers as people do. */
final class SpokenNumbers {

  private static final String[] WORDS = {
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen"
  };
  private static final String[] TENS = {
    "", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"
  };

  private static final String[] ORDINALS =
      (". first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth"
              + " thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth"
              + " twentieth thirtieth")
          .split(" ");

  private SpokenNumbers() {}

  /** Digit by digit. */
  static String spaced(String digits) {
    return digits.chars().mapToObj(d -> WORDS[d - '0']).collect(Collectors.joining(" "));
  }

  /** An amount, digit by digit or in number words, each about as often. */
  static String amount(String figures, Random random) {
    String[] parts = figures.split("\\.");
    boolean digitByDigit = random.nextBoolean();
    String whole = digitByDigit ? spaced(parts[0]) : inWords(Integer.parseInt(parts[0]));
    return parts.length == 1 ? whole : whole + " point " + spaced(parts[1]);
  }

  /** A time of day in one of the ways that it is said. */
  static String time(int hour, int minute, Random random) {
    String figures = String.format(Locale.ROOT, "%02d%02d", hour, minute);
    if (random.nextBoolean() || minute % 10 == 0 && minute / 10 < 2) {
      return spaced(figures);
    }
    String hours = hour < 10 ? "zero " + WORDS[hour] : inWords(hour);
    return hours + " " + (minute < 10 ? "zero " + WORDS[minute] : inWords(minute));
  }

  /** A day with its month in one of the ways that it is said; now and then with its year. */
  static String date(LocalDate date, Random random) {
    int day = date.getDayOfMonth();
    String month = date.getMonth().name().toLowerCase(Locale.ROOT);
    String said =
        switch (random.nextInt(6)) {
          case 0 -> inWords(day) + " " + month;
          case 1 -> inOrder(day) + " of " + month;
          case 2 -> month + " " + inOrder(day);
          case 3 -> month + " " + inWords(day);
          default -> spaced(String.valueOf(day)) + " " + month;
        };
    return random.nextInt(4) == 0 ? said + " " + spaced(String.valueOf(date.getYear())) : said;
  }

  /** The word for the place in a row, first to thirty first. */
  static String inOrder(int place) {
    int unit = place % 10;
    return place <= 20 || unit == 0
        ? ORDINALS[place <= 20 ? place : ORDINALS.length - 1]
        : TENS[place / 10] + " " + ORDINALS[unit];
  }

  /** In number words, 0 to 999. */
  static String inWords(int number) {
    if (number >= 100) {
      String hundred = WORDS[number / 100] + " hundred";
      return number % 100 == 0 ? hundred : hundred + " " + inWords(number % 100);
    }
    if (number < 20) {
      return WORDS[number];
    }
    return number % 10 == 0 ? TENS[number / 10] : TENS[number / 10] + " " + WORDS[number % 10];
  }
}
