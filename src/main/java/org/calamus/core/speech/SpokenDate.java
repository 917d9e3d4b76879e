package org.calamus.core.speech;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldValue;

/**
 * Days as they are said: "one six june", "sixteen june", "the sixteenth of june" without its
 * article, "june sixteen", each with or without the year behind it, as "two zero two six" or
 * "twenty twenty six". The month has its name always: in numbers alone, day and month are told
 * apart by habit, and habits differ. On the keypad a day is struck as the screen shows it, month
 * before day, with the year in front where it is not the last such day (ISO 8601: from the greater
 * to the smaller).
 */
final class SpokenDate {

  private static final String HINT = "say the day, then the month by its name";
  private static final String KEYS =
      "a date is month and day, such as 0616, or with its year, 20260616";
  private static final int YEAR_DIGITS = 4;
  private static final int MONTH_AND_DAY = 4;

  /** A leap day that counts comes at most eight years apart (1896, 1904). */
  private static final int MOST_YEARS_BACK = 8;

  private SpokenDate() {}

  /** Reads spoken tokens; "thirteenth" and "thirtieth" sound alike. */
  static Heard read(List<Token> tokens, LocalDate today) {
    Optional<LocalDate> heard = date(tokens, today);
    if (heard.isEmpty()) {
      return new Heard.No(HINT);
    }
    FieldValue value = new FieldValue.Day(heard.get());
    return twin(tokens)
        .flatMap(t -> date(t, today))
        .<Heard>map(t -> new Heard.Twins(value, new FieldValue.Day(t)))
        .orElseGet(() -> new Heard.One(value));
  }

  /** Reads struck digits: four without the year, eight with it. */
  static Heard keyed(String keys, LocalDate today) {
    Optional<LocalDate> date = Optional.empty();
    if (keys.matches("\\d{4}|\\d{8}")) {
      int end = keys.length();
      int day = Integer.parseInt(keys.substring(end - 2));
      int month = Integer.parseInt(keys.substring(end - MONTH_AND_DAY, end - 2));
      String year = keys.substring(0, end - MONTH_AND_DAY);
      date =
          month >= 1 && month <= Month.values().length
              ? date(year, Month.of(month), day, today)
              : Optional.empty();
    }
    return date.<Heard>map(d -> new Heard.One(new FieldValue.Day(d)))
        .orElseGet(() -> new Heard.No(KEYS));
  }

  private static Optional<LocalDate> date(List<Token> tokens, LocalDate today) {
    List<Token> months = tokens.stream().filter(Token.MonthName.class::isInstance).toList();
    if (months.size() != 1) {
      return Optional.empty();
    }
    Month month = ((Token.MonthName) months.get(0)).month();
    int at = tokens.indexOf(months.get(0));
    List<Token> front = tokens.subList(0, at);
    List<Token> rest = tokens.subList(at + 1, tokens.size());
    Optional<String> before = digits(front);
    Optional<String> behind = digits(rest);
    boolean isOrdered = areOrdinalsInPlace(front) && areOrdinalsInPlace(rest);
    boolean endsInDay = front.stream().limit(Math.max(0, at - 1)).noneMatch(SpokenDate::isOrdinal);
    if (before.isEmpty() || behind.isEmpty() || !isOrdered || !endsInDay) {
      return Optional.empty();
    }
    if (before.get().isEmpty()) {
      int end = dayAtFront(behind.get());
      return date(behind.get().substring(end), month, behind.get().substring(0, end), today);
    }
    return before.get().length() == YEAR_DIGITS
        ? date(before.get(), month, behind.get(), today)
        : date(behind.get(), month, before.get(), today);
  }

  /** Where the day ends behind its month: before a year, or with all of it. */
  private static int dayAtFront(String digits) {
    return digits.length() > YEAR_DIGITS ? digits.length() - YEAR_DIGITS : digits.length();
  }

  private static Optional<LocalDate> date(String year, Month month, String day, LocalDate today) {
    return day.matches("\\d{1,2}")
        ? date(year, month, Integer.parseInt(day), today)
        : Optional.empty();
  }

  /** The day of a year; where the year is empty, the last such day up to today. */
  private static Optional<LocalDate> date(String year, Month month, int day, LocalDate today) {
    if (day < 1 || day > month.maxLength()) {
      return Optional.empty();
    }
    if (year.isEmpty()) {
      return last(MonthDay.of(month, day), today);
    }
    try {
      return year.length() == YEAR_DIGITS
          ? Optional.of(LocalDate.of(Integer.parseInt(year), month, day))
          : Optional.empty();
    } catch (DateTimeException noLeapYear) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> last(MonthDay day, LocalDate today) {
    for (int back = 0; back <= MOST_YEARS_BACK; back++) {
      int year = today.getYear() - back;
      if (day.isValidYear(year) && !day.atYear(year).isAfter(today)) {
        return Optional.of(day.atYear(year));
      }
    }
    return Optional.empty();
  }

  /** The digits of numbers in a row; empty where something else is among them. */
  private static Optional<String> digits(List<Token> tokens) {
    StringBuilder digits = new StringBuilder();
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      if (token instanceof Token.Digit digit) {
        digits.append(digit.value());
      } else if (token instanceof Token.Teen teen) {
        digits.append(teen.value());
      } else if (token instanceof Token.Ordinal ordinal) {
        digits.append(ordinal.value());
      } else if (token instanceof Token.Tens tens) {
        boolean hasUnit = i + 1 < tokens.size() && isUnit(tokens.get(i + 1));
        digits.append(hasUnit ? String.valueOf(tens.value() / 10) : tens.value());
      } else {
        return Optional.empty();
      }
    }
    return Optional.of(digits.toString());
  }

  /** An ordinal is said first, or second behind its tens: "sixteenth", "twenty first". */
  private static boolean areOrdinalsInPlace(List<Token> tokens) {
    boolean hasTens = !tokens.isEmpty() && tokens.get(0) instanceof Token.Tens;
    for (int i = 0; i < tokens.size(); i++) {
      boolean isInPlace = i == 0 || i == 1 && hasTens && isUnit(tokens.get(i));
      if (isOrdinal(tokens.get(i)) && !isInPlace) {
        return false;
      }
    }
    return true;
  }

  private static boolean isOrdinal(Token token) {
    return token instanceof Token.Ordinal;
  }

  private static boolean isUnit(Token token) {
    return token instanceof Token.Digit digit && digit.value() > 0
        || token instanceof Token.Ordinal ordinal && ordinal.value() < 10;
  }

  /** The same with the other of thirteen and thirty in it, where either is said alone. */
  private static Optional<List<Token>> twin(List<Token> tokens) {
    List<Token> replaced = new ArrayList<>(tokens);
    for (int i = 0; i < tokens.size(); i++) {
      boolean isAlone = i + 1 == tokens.size() || !isUnit(tokens.get(i + 1));
      Optional<Token> other = isAlone ? other(tokens.get(i)) : Optional.empty();
      if (other.isPresent()) {
        replaced.set(i, other.get());
        return Optional.of(replaced);
      }
    }
    return Optional.empty();
  }

  private static Optional<Token> other(Token token) {
    Token thirteen = new Token.Teen(13);
    Token thirty = new Token.Tens(30);
    Token thirteenth = new Token.Ordinal(13);
    Token thirtieth = new Token.Ordinal(30);
    if (token.equals(thirteen) || token.equals(thirty)) {
      return Optional.of(token.equals(thirteen) ? thirty : thirteen);
    }
    return token.equals(thirteenth) || token.equals(thirtieth)
        ? Optional.of(token.equals(thirteenth) ? thirtieth : thirteenth)
        : Optional.empty();
  }
}
