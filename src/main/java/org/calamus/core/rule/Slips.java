package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.Range;

/** Finds the slip of tongue or eye that most likely lies behind a wrong number. */
final class Slips {

  private Slips() {}

  /**
   * An amount that fits the range and differs from the given one by one slip: two neighbouring
   * digits swapped, or the decimal point one place off.
   */
  static Optional<BigDecimal> likely(BigDecimal amount, Range fits) {
    List<BigDecimal> candidates = new ArrayList<>();
    String digits = amount.toPlainString();
    for (int i = 0; i + 1 < digits.length(); i++) {
      if (Character.isDigit(digits.charAt(i)) && Character.isDigit(digits.charAt(i + 1))) {
        candidates.add(new BigDecimal(swapped(digits, i)));
      }
    }
    candidates.add(plain(amount.movePointRight(1)));
    candidates.add(plain(amount.movePointLeft(1)));
    return candidates.stream()
        .filter(c -> c.compareTo(amount) != 0)
        .filter(fits::holds)
        .findFirst();
  }

  /** Whether two texts differ by one swap of neighbours. */
  static boolean isTransposed(String one, String other) {
    for (int i = 0; i + 1 < one.length(); i++) {
      if (!one.equals(other) && swapped(one, i).equals(other)) {
        return true;
      }
    }
    return false;
  }

  private static String swapped(String text, int at) {
    return text.substring(0, at) + text.charAt(at + 1) + text.charAt(at) + text.substring(at + 2);
  }

  private static BigDecimal plain(BigDecimal amount) {
    return amount.scale() < 0 ? amount.setScale(0) : amount;
  }
}
