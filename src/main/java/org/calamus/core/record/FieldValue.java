package org.calamus.core.record;

import java.math.BigDecimal;
import java.util.Objects;

/** What a field holds: a band number, a code of a table, or a measured amount. */
public sealed interface FieldValue permits BandNumber, FieldValue.Code, FieldValue.Measure {

  /**
   * The value as it is shown and stored, without unit: {@code 2841-55601}, {@code WBNU}, {@code
   * 92}.
   */
  String text();

  /**
   * A code of the field's table.
   *
   * @param code the code, such as {@code WBNU} or {@code AHY}; never blank
   */
  record Code(String code) implements FieldValue {
    /** Checks that there is a code. */
    public Code {
      if (code.isBlank()) {
        throw new IllegalArgumentException("a code cannot be blank");
      }
    }

    @Override
    public String text() {
      return code;
    }
  }

  /**
   * A measured amount with the digits as received: 22.30 stays 22.30.
   *
   * @param amount the amount, never null
   * @param unit its unit, never null
   */
  record Measure(BigDecimal amount, Unit unit) implements FieldValue {
    /** Checks that both parts are there. */
    public Measure {
      Objects.requireNonNull(amount);
      Objects.requireNonNull(unit);
    }

    @Override
    public String text() {
      return amount.toPlainString();
    }
  }
}
