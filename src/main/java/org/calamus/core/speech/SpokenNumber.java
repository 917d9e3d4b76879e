package org.calamus.core.speech;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.StringJoiner;
import java.util.function.Function;
import java.util.stream.Stream;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/**
 * Spoken numbers as banders say them: "nine two", "ninety two", "one oh five", "one hundred five",
 * "one hundred and five", "one ninety two", "nineteen point one", "two two decimal three".
 *
 * <p>"Twenty two three" and "eleven four" could mean two numbers each and are not taken. A teen or
 * a ten by itself has a twin, since each is often taken for the other. (Common practice, no
 * published source; that 15 is heard as 50 is reported by medication-safety bodies, which therefore
 * ask for "one five".) "Eighteen nine" is no number either: it is what "eighty nine" is heard as.
 */
final class SpokenNumber {

  /** How to say a number that none of the better hints fits. */
  static final String HINT = "say it digit by digit";

  private static final List<String> TEENS =
      List.of(
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen");
  private static final List<String> TENS =
      List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");
  private static final int MOST_DIGITS = 4;
  private static final int FIRST_TEEN_LIKE_TENS = 13;
  private static final int FIRST_TENS_LIKE_TEEN = 30;

  /** Forty like "four two", but not fifty, whose "five" is unlike. */
  private static final Set<Integer> TENS_LIKE_UNIT_AND_TWO = Set.of(40, 60, 70, 80, 90);

  private SpokenNumber() {}

  /** Reads the tokens of one number. */
  static Heard read(List<Token> tokens, Function<BigDecimal, FieldValue> as) {
    int point = tokens.indexOf(new Token.Point());
    List<Token> whole = point < 0 ? tokens : tokens.subList(0, point);
    List<Token> fraction = point < 0 ? List.of() : tokens.subList(point + 1, tokens.size());
    Optional<String> decimals = allDigits(fraction);
    Optional<String> heard = whole(whole);
    if (heard.isEmpty() || decimals.isEmpty() || point >= 0 && fraction.isEmpty()) {
      return perhaps(tokens, as).orElseGet(() -> new Heard.No(hint(whole, fraction, point >= 0)));
    }
    String tail = point < 0 ? "" : "." + decimals.get();
    BigDecimal value = new BigDecimal(heard.get() + tail);
    List<FieldValue> others =
        Stream.concat(twin(whole).stream(), point < 0 ? Stream.empty() : unitOfTwo(whole).stream())
            .map(t -> as.apply(new BigDecimal(t + tail)))
            .toList();
    return others.isEmpty()
        ? new Heard.One(as.apply(value))
        : new Heard.Twins(as.apply(value), others);
  }

  /**
   * Reads the tokens of a code that is a number.
   *
   * @param as the value of a code; empty where there is no such code
   */
  static Heard code(List<Token> tokens, Function<String, Optional<FieldValue>> as) {
    Optional<FieldValue> heard = whole(tokens).flatMap(as);
    Optional<FieldValue> twin = twin(tokens).flatMap(as);
    if (heard.isEmpty()) {
      return new Heard.No(HINT);
    }
    return twin.<Heard>map(t -> new Heard.Twins(heard.get(), t))
        .orElseGet(() -> new Heard.One(heard.get()));
  }

  /** "Eighteen nine": eighty nine, or eighteen point nine. */
  private static Optional<Heard> perhaps(List<Token> tokens, Function<BigDecimal, FieldValue> as) {
    if (tokens.size() != 2
        || !(tokens.get(0) instanceof Token.Teen teen)
        || !(tokens.get(1) instanceof Token.Digit digit)
        || teen.value() < FIRST_TEEN_LIKE_TENS
        || digit.value() == 0) {
      return Optional.empty();
    }
    int tens = (teen.value() - 10) * 10;
    BigDecimal withPoint = new BigDecimal(teen.value() + "." + digit.value());
    return Optional.of(
        new Heard.Perhaps(as.apply(BigDecimal.valueOf(tens + digit.value())), as.apply(withPoint)));
  }

  /** How to say what was not understood, with the very digits where they are clear. */
  private static String hint(List<Token> whole, List<Token> fraction, boolean hasPoint) {
    if (hasPoint && whole.isEmpty() && isSpoken(fraction)) {
      return "say zero point " + words(fraction);
    }
    if (hasPoint) {
      return fraction.isEmpty() ? "say the digits behind the point" : HINT;
    }
    Optional<String> digits = allDigits(whole);
    if (digits.filter(d -> d.length() > MOST_DIGITS).isPresent()) {
      return digits.get().length() + " digits, a number has four at most";
    }
    int last = whole.size() - 1;
    boolean endsInDigit = last > 0 && whole.get(last) instanceof Token.Digit;
    Optional<String> before = endsInDigit ? whole(whole.subList(0, last)) : Optional.empty();
    boolean isInWords = whole.stream().anyMatch(t -> !(t instanceof Token.Digit));
    return before.isPresent() && isInWords && isSpoken(whole)
        ? "say "
            + words(whole.subList(0, last))
            + " point "
            + words(whole.subList(last, whole.size()))
            + ", or "
            + Spoken.digits(before.get())
            + " "
            + words(whole.subList(last, whole.size()))
        : HINT;
  }

  private static boolean isSpoken(List<Token> tokens) {
    return !tokens.isEmpty() && !words(tokens).isEmpty();
  }

  /** Digits, teens and tens as they are said; nothing where there is anything else. */
  private static String words(List<Token> tokens) {
    StringJoiner words = new StringJoiner(" ");
    for (Token token : tokens) {
      if (token instanceof Token.Digit digit) {
        words.add(Spoken.digits(String.valueOf(digit.value())));
      } else if (token instanceof Token.Teen teen) {
        words.add(TEENS.get(teen.value() - 10));
      } else if (token instanceof Token.Tens tens) {
        words.add(TENS.get(tens.value() / 10 - 2));
      } else {
        return "";
      }
    }
    return words.toString();
  }

  /** The digits of tokens that are all single digits; empty text for no token. */
  static Optional<String> allDigits(List<Token> tokens) {
    StringBuilder digits = new StringBuilder();
    for (Token token : tokens) {
      if (!(token instanceof Token.Digit d)) {
        return Optional.empty();
      }
      digits.append(d.value());
    }
    return Optional.of(digits.toString());
  }

  private static Optional<String> whole(List<Token> tokens) {
    if (tokens.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> digits = allDigits(tokens);
    if (digits.isPresent()) {
      return digits.filter(d -> d.length() <= MOST_DIGITS).map(SpokenNumber::withoutLeadingZeros);
    }
    Optional<Integer> small = belowHundred(tokens);
    if (small.isPresent()) {
      return small.map(String::valueOf);
    }
    return tokens.get(0) instanceof Token.Digit hundreds && hundreds.value() > 0
        ? hundreds(hundreds.value(), tokens.subList(1, tokens.size()))
        : Optional.empty();
  }

  /**
   * "One hundred", "one hundred five", "one hundred and five", "one hundred twenty two", "one
   * ninety two", "one fifteen".
   */
  private static Optional<String> hundreds(int hundreds, List<Token> rest) {
    boolean joins = !rest.isEmpty() && rest.get(0) instanceof Token.HundredAnd;
    boolean said = joins || !rest.isEmpty() && rest.get(0) instanceof Token.Hundred;
    List<Token> below = said ? rest.subList(1, rest.size()) : rest;
    if (said && below.isEmpty()) {
      return joins ? Optional.empty() : Optional.of(String.valueOf(hundreds * 100));
    }
    Optional<Integer> units =
        said && below.size() == 1 && below.get(0) instanceof Token.Digit d && d.value() > 0
            ? Optional.of(d.value())
            : belowHundred(below);
    return units.map(u -> String.valueOf(hundreds * 100 + u));
  }

  private static Optional<Integer> belowHundred(List<Token> tokens) {
    if (tokens.size() == 1 && tokens.get(0) instanceof Token.Teen teen) {
      return Optional.of(teen.value());
    }
    if (tokens.isEmpty() || !(tokens.get(0) instanceof Token.Tens tens)) {
      return Optional.empty();
    }
    if (tokens.size() == 1) {
      return Optional.of(tens.value());
    }
    return tokens.size() == 2 && Tokens.isUnit(tokens.get(1))
        ? Optional.of(tens.value() + tokens.get(1).number().getAsInt())
        : Optional.empty();
  }

  /** What a teen or ten at the end sounds like: fifteen and fifty, one fifteen and one fifty. */
  private static Optional<String> twin(List<Token> tokens) {
    if (tokens.isEmpty()) {
      return Optional.empty();
    }
    Token last = tokens.get(tokens.size() - 1);
    Optional<Token> other = Optional.empty();
    if (last instanceof Token.Teen t && t.value() >= FIRST_TEEN_LIKE_TENS) {
      other = Optional.of(new Token.Tens((t.value() - 10) * 10));
    } else if (last instanceof Token.Tens t && t.value() >= FIRST_TENS_LIKE_TEEN) {
      other = Optional.of(new Token.Teen(t.value() / 10 + 10));
    }
    return other.flatMap(
        o -> {
          List<Token> replaced = new ArrayList<>(tokens.subList(0, tokens.size() - 1));
          replaced.add(o);
          return whole(replaced);
        });
  }

  /**
   * What a ten that ends in the sound of "two" may be: "sixty point seven" is what "six two point
   * seven" is heard as (docs/voice-words.md).
   */
  private static Optional<String> unitOfTwo(List<Token> tokens) {
    boolean isLike =
        !tokens.isEmpty()
            && tokens.get(tokens.size() - 1) instanceof Token.Tens tens
            && TENS_LIKE_UNIT_AND_TWO.contains(tens.value());
    if (!isLike) {
      return Optional.empty();
    }
    List<Token> replaced = new ArrayList<>(tokens);
    replaced.add(new Token.Digit(2));
    return whole(replaced);
  }

  private static String withoutLeadingZeros(String digits) {
    String stripped = digits.replaceFirst("^0+(?=.)", "");
    return stripped.isEmpty() ? "0" : stripped;
  }
}
