package org.calamus.core.rule;

import java.math.BigDecimal;

/**
 * A slip of tongue, eye or instrument that would explain a wrong amount.
 *
 * @param kind what went wrong
 * @param amount what was meant, if it was this slip
 */
public record Slip(Kind kind, BigDecimal amount) {

  /** What can go wrong with a number. Common practice, no published source. */
  public enum Kind {
    /** Two neighbouring digits changed places: 29 for 92. */
    DIGITS_SWAPPED("two digits swapped"),
    /** The decimal point is one place off: 223 for 22.3. */
    DECIMAL_POINT("decimal point one place off"),
    /** The hundred was not said or not heard: 05 for 105. */
    HUNDRED_MISSING("a hundred missing"),
    /** A digit is missing or one is too many: 922 for 92. */
    DIGIT_TOO_MANY("a digit too many"),
    /** The instrument was set to inches: 3.62 for 92. */
    INCHES("inches for millimetres"),
    /** The amount is in centimetres: 9.2 for 92. */
    CENTIMETRES("centimetres for millimetres");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** The kind in words, to show and to say. */
    public String words() {
      return words;
    }
  }
}
