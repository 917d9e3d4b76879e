package org.calamus.core.speech;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
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
  private static final int MONTH_AND_DAY = 4;
  private static final int THIRTEEN = 13;
  private static final int THIRTY = 30;
  private static final String NO_YEAR = "?";
  private static final String YEAR = "(19|20)\\d\\d";

  /** A leap day that counts comes at most eight years apart (1896, 1904). */
  private static final int MOST_YEARS_BACK = 8;

  private SpokenDate() {}

  /**
   * Reads spoken tokens. Where they can be cut into day and year in two ways, and of a thirteenth
   * and a thirtieth, which sound alike, more than one day comes of it.
   */
  static Heard read(List<Token> tokens, LocalDate today) {
    List<Token> months = tokens.stream().filter(Token.MonthName.class::isInstance).toList();
    if (months.size() != 1) {
      return new Heard.No(HINT);
    }
    Month month = ((Token.MonthName) months.get(0)).month();
    int at = tokens.indexOf(months.get(0));
    Set<FieldValue> said = new LinkedHashSet<>();
    Set<FieldValue> twins = new LinkedHashSet<>();
    for (Cut cut : cuts(tokens.subList(0, at), tokens.subList(at + 1, tokens.size()))) {
      day(cut.day()).ifPresent(day -> date(cut.year(), month, day, today).ifPresent(said::add));
      twin(cut.day()).ifPresent(day -> date(cut.year(), month, day, today).ifPresent(twins::add));
    }
    if (said.isEmpty()) {
      return new Heard.No(HINT);
    }
    said.addAll(twins);
    List<FieldValue> all = List.copyOf(said);
    return all.size() == 1
        ? new Heard.One(all.get(0))
        : new Heard.Twins(all.get(0), all.subList(1, all.size()));
  }

  private static Optional<FieldValue> date(
      List<Token> year, Month month, int day, LocalDate today) {
    return date(year(year), month, day, today).map(FieldValue.Day::new);
  }

  /** What may be the day and what the year; the year may be empty. */
  private record Cut(List<Token> day, List<Token> year) {}

  private static List<Cut> cuts(List<Token> before, List<Token> behind) {
    List<Cut> cuts = new ArrayList<>();
    if (before.isEmpty()) {
      for (int end = 1; end <= behind.size(); end++) {
        cuts.add(new Cut(behind.subList(0, end), behind.subList(end, behind.size())));
      }
    } else {
      cuts.add(new Cut(before, behind));
      cuts.add(new Cut(behind, before));
    }
    return cuts;
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

  /** The day of a year; where the year is empty, the last such day up to today. */
  private static Optional<LocalDate> date(String year, Month month, int day, LocalDate today) {
    if (day < 1 || day > month.maxLength()) {
      return Optional.empty();
    }
    if (year.isEmpty()) {
      return last(MonthDay.of(month, day), today);
    }
    try {
      return year.matches(YEAR)
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

  /** The day that the tokens are: "one six", "sixteen", "twenty first". */
  private static OptionalInt day(List<Token> tokens) {
    if (tokens.size() == 1) {
      return tokens.get(0).number();
    }
    if (tokens.size() != 2) {
      return OptionalInt.empty();
    }
    if (tokens.get(0) instanceof Token.Digit tens && tokens.get(1) instanceof Token.Digit unit) {
      return OptionalInt.of(10 * tens.value() + unit.value());
    }
    return tokens.get(0) instanceof Token.Tens tens && isUnit(tokens.get(1))
        ? OptionalInt.of(tens.value() + tokens.get(1).number().getAsInt())
        : OptionalInt.empty();
  }

  private static boolean isUnit(Token token) {
    return Tokens.isUnit(token) || token instanceof Token.Ordinal ordinal && ordinal.value() < 10;
  }

  /**
   * Figures of a year: "two zero two six", "twenty twenty six"; what is no year has a mark in it.
   */
  private static String year(List<Token> tokens) {
    StringBuilder figures = new StringBuilder();
    for (int i = 0; i < tokens.size(); i++) {
      figures.append(Tokens.figures(tokens, i).orElse(NO_YEAR));
    }
    return figures.toString();
  }

  /** The other of thirteen and thirty, where the day is one of them in a word. */
  private static OptionalInt twin(List<Token> day) {
    boolean isWord = day.size() == 1 && !(day.get(0) instanceof Token.Digit);
    int number = isWord ? day(day).orElse(0) : 0;
    return number == THIRTEEN || number == THIRTY
        ? OptionalInt.of(THIRTEEN + THIRTY - number)
        : OptionalInt.empty();
  }
}
