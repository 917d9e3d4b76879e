package org.calamus.core.speech;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/**
 * Times of day on the 24-hour clock as they are said: "zero eight four zero", "oh eight forty",
 * "fourteen thirty five", "zero nine hundred", "fourteen hundred hours". (ICAO Annex 10, Volume II:
 * time in four figures.)
 */
final class SpokenTime {

  private static final String HINT = "say the time in four digits";
  private static final int FIRST_TWIN_TEEN = 13;
  private static final int FIRST_TWIN_TENS = 30;

  private SpokenTime() {}

  /** Reads spoken tokens; a teen or a ten at the end has a twin where both are times. */
  static Heard read(List<Token> tokens) {
    Optional<FieldValue> heard = digits(tokens).flatMap(SpokenTime::time);
    if (heard.isEmpty()) {
      return new Heard.No(
          digits(tokens).filter(SpokenTime::lacksZero).map(SpokenTime::whole).orElse(HINT));
    }
    Optional<FieldValue> twin = twin(tokens).flatMap(SpokenTime::digits).flatMap(SpokenTime::time);
    return twin.<Heard>map(t -> new Heard.Twins(heard.get(), t))
        .orElseGet(() -> new Heard.One(heard.get()));
  }

  /** Reads four struck digits. */
  static Heard keyed(String keys) {
    return time(keys)
        .<Heard>map(Heard.One::new)
        .orElseGet(() -> new Heard.No("a time is four digits, such as 0840"));
  }

  /** Whether it would be a time with a zero in front. */
  private static boolean lacksZero(String digits) {
    return time("0" + digits).isPresent();
  }

  private static String whole(String digits) {
    return "say " + Spoken.digits("0" + digits);
  }

  private static Optional<FieldValue> time(String digits) {
    if (!digits.matches("([01]\\d|2[0-3])[0-5]\\d")) {
      return Optional.empty();
    }
    int hour = Integer.parseInt(digits.substring(0, 2));
    int minute = Integer.parseInt(digits.substring(2));
    return Optional.of(new FieldValue.TimeOfDay(LocalTime.of(hour, minute)));
  }

  private static Optional<String> digits(List<Token> tokens) {
    StringBuilder digits = new StringBuilder();
    for (int i = 0; i < tokens.size(); i++) {
      boolean isHundred =
          tokens.get(i) instanceof Token.Hundred
              || tokens.get(i) instanceof Token.HundredHours && i == tokens.size() - 1;
      Optional<String> figures = isHundred ? Optional.of("00") : Tokens.figures(tokens, i);
      if (figures.isEmpty()) {
        return Optional.empty();
      }
      digits.append(figures.get());
    }
    return Optional.of(digits.toString());
  }

  private static Optional<List<Token>> twin(List<Token> tokens) {
    Token last = tokens.get(tokens.size() - 1);
    Token other;
    if (last instanceof Token.Teen teen && teen.value() >= FIRST_TWIN_TEEN) {
      other = new Token.Tens((teen.value() - 10) * 10);
    } else if (last instanceof Token.Tens tens && tens.value() >= FIRST_TWIN_TENS) {
      other = new Token.Teen(tens.value() / 10 + 10);
    } else {
      return Optional.empty();
    }
    List<Token> replaced = new ArrayList<>(tokens.subList(0, tokens.size() - 1));
    replaced.add(other);
    return Optional.of(replaced);
  }
}
