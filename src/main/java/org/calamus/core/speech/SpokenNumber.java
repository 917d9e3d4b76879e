package org.calamus.core.speech;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Spoken numbers as banders say them: "nine two", "ninety two", "one oh five", "one hundred five",
 * "one ninety two", "nineteen point one", "two two point three".
 *
 * <p>"Twenty two three" and "eleven four" could mean two numbers each and are not taken. A teen or
 * a ten by itself has a twin, since each is often taken for the other. (Common practice, no
 * published source; that 15 is heard as 50 is reported by medication-safety bodies, which therefore
 * ask for "one five".)
 */
final class SpokenNumber {

  private static final String HINT = "say it digit by digit";

  private SpokenNumber() {}

  /** Reads the tokens of one number. */
  static Heard read(
      List<Token> tokens, Function<BigDecimal, org.calamus.core.record.FieldValue> as) {
    int point = tokens.indexOf(new Token.Point());
    List<Token> whole = point < 0 ? tokens : tokens.subList(0, point);
    List<Token> fraction = point < 0 ? List.of() : tokens.subList(point + 1, tokens.size());
    Optional<String> decimals = allDigits(fraction);
    if (whole.isEmpty() || decimals.isEmpty() || point >= 0 && fraction.isEmpty()) {
      return new Heard.No(HINT);
    }
    String tail = point < 0 ? "" : "." + decimals.get();
    Optional<String> twin = twin(whole);
    Optional<String> heard = whole(whole);
    if (heard.isEmpty()) {
      return new Heard.No(HINT);
    }
    BigDecimal value = new BigDecimal(heard.get() + tail);
    return twin.<Heard>map(
            t -> new Heard.Twins(as.apply(value), as.apply(new BigDecimal(t + tail))))
        .orElseGet(() -> new Heard.One(as.apply(value)));
  }

  /** The digits of tokens that are all single digits, at most five of them; empty text for none. */
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
    Optional<String> digits = allDigits(tokens);
    if (digits.isPresent()) {
      return digits.filter(d -> d.length() <= 4).map(SpokenNumber::withoutLeadingZeros);
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
   * "One hundred", "one hundred five", "one hundred twenty two", "one ninety two", "one fifteen".
   */
  private static Optional<String> hundreds(int hundreds, List<Token> rest) {
    boolean said = !rest.isEmpty() && rest.get(0) instanceof Token.Hundred;
    List<Token> below = said ? rest.subList(1, rest.size()) : rest;
    if (said && below.isEmpty()) {
      return Optional.of(String.valueOf(hundreds * 100));
    }
    Optional<Integer> units =
        said && below.size() == 1 && below.get(0) instanceof Token.Digit d
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
    return tokens.size() == 2 && tokens.get(1) instanceof Token.Digit d && d.value() > 0
        ? Optional.of(tens.value() + d.value())
        : Optional.empty();
  }

  /** What a teen or ten at the end sounds like: fifteen and fifty, one fifteen and one fifty. */
  private static Optional<String> twin(List<Token> tokens) {
    if (tokens.isEmpty()) {
      return Optional.empty();
    }
    Token last = tokens.get(tokens.size() - 1);
    Optional<Token> other = Optional.empty();
    if (last instanceof Token.Teen t && t.value() >= 13) {
      other = Optional.of(new Token.Tens((t.value() - 10) * 10));
    } else if (last instanceof Token.Tens t && t.value() >= 30) {
      other = Optional.of(new Token.Teen(t.value() / 10 + 10));
    }
    return other.flatMap(
        o -> {
          List<Token> replaced = new java.util.ArrayList<>(tokens.subList(0, tokens.size() - 1));
          replaced.add(o);
          return whole(replaced);
        });
  }

  private static String withoutLeadingZeros(String digits) {
    String stripped = digits.replaceFirst("^0+(?=.)", "");
    return stripped.isEmpty() ? "0" : stripped;
  }
}
