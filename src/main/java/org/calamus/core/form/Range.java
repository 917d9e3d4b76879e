package org.calamus.core.form;

import java.math.BigDecimal;

/**
 * A range of amounts, both ends in it.
 *
 * @param least the lower end
 * @param most the upper end, not below the lower
 */
public record Range(BigDecimal least, BigDecimal most) {

  /** Checks the order of the ends. */
  public Range {
    if (least.compareTo(most) > 0) {
      throw new IllegalArgumentException("a range from " + least + " down to " + most);
    }
  }

  /** Whether the amount lies in the range. */
  public boolean holds(BigDecimal amount) {
    return amount.compareTo(least) >= 0 && amount.compareTo(most) <= 0;
  }

  /** Both ends, as shown: {@code 77 to 100}. */
  public String text() {
    return least.toPlainString() + " to " + most.toPlainString();
  }
}
