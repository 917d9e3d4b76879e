package org.calamus.core.speech;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldValue;

/** Makes a field's value of spoken tokens or of struck keys. */
public final class ValueReader {

  private static final int LEAST_LAST_DIGITS = 2;
  private static final int SUFFIX = 5;

  private ValueReader() {}

  /**
   * What spoken tokens come to in a field.
   *
   * @param spec the field
   * @param tokens the tokens, at least one
   * @param expected what makes it whole where it is given in short
   */
  static Heard spoken(FieldSpec spec, List<Token> tokens, Expected expected) {
    if (spec.kind() instanceof FieldKind.Measured measured) {
      return SpokenNumber.read(tokens, amount -> new FieldValue.Measure(amount, measured.unit()));
    }
    if (spec.kind() instanceof FieldKind.Coded coded) {
      return CodeReader.one(spec.id(), tokens, coded.table());
    }
    if (spec.kind() instanceof FieldKind.CodedMany many) {
      return CodeReader.many(spec.id(), tokens, many);
    }
    if (spec.kind() instanceof FieldKind.Time) {
      return SpokenTime.read(tokens);
    }
    if (spec.kind() instanceof FieldKind.Date) {
      return SpokenDate.read(tokens, expected.today());
    }
    if (spec.kind() instanceof FieldKind.Note) {
      return new Heard.No("remarks are spoken as a memo or typed");
    }
    return SpokenNumber.allDigits(tokens)
        .map(digits -> band(digits, expected.band()))
        .orElse(new Heard.No("say the digits"));
  }

  /**
   * What struck keys come to in a field.
   *
   * @param spec the field
   * @param keys the keys, at least one
   * @param expected what makes it whole where it is given in short
   */
  public static Heard keyed(FieldSpec spec, String keys, Expected expected) {
    if (spec.kind() instanceof FieldKind.Measured measured) {
      return keys.matches("\\d{1,4}(\\.\\d{1,3})?")
          ? new Heard.One(new FieldValue.Measure(new BigDecimal(keys), measured.unit()))
          : new Heard.No("a number is digits, and a point where needed");
    }
    if (spec.kind() instanceof FieldKind.Coded coded) {
      return CodeReader.keyed(keys, coded.table());
    }
    if (spec.kind() instanceof FieldKind.CodedMany many) {
      return CodeReader.keyed(keys, many);
    }
    if (spec.kind() instanceof FieldKind.Time) {
      return SpokenTime.keyed(keys);
    }
    if (spec.kind() instanceof FieldKind.Date) {
      return SpokenDate.keyed(keys, expected.today());
    }
    if (spec.kind() instanceof FieldKind.Note) {
      return keys.isBlank()
          ? new Heard.No("a remark has words")
          : new Heard.One(new FieldValue.Note(keys, Optional.empty()));
    }
    return keys.matches("\\d+")
        ? band(keys, expected.band())
        : new Heard.No("a band number is digits");
  }

  private static Heard band(String digits, Optional<BandNumber> expected) {
    Optional<BandNumber> whole = BandNumber.parse(digits);
    if (whole.isPresent()) {
      return new Heard.One(whole.get());
    }
    boolean isEnd = digits.length() >= LEAST_LAST_DIGITS && digits.length() <= SUFFIX;
    if (isEnd && expected.filter(e -> digits.length() <= e.suffix().length()).isPresent()) {
      return new Heard.Ending(expected.get().endingIn(digits), digits);
    }
    return new Heard.No(
        digits.length()
            + (digits.length() == 1 ? " digit" : " digits")
            + ", a band has eight or nine"
            + (expected.isPresent() ? "; or give its last three" : ""));
  }
}
