package org.calamus.core.form;

import java.math.BigDecimal;
import org.calamus.core.record.Unit;

/** What sort of value a field holds. */
public sealed interface FieldKind {

  /** A band number. */
  record Band() implements FieldKind {}

  /**
   * A code of a table.
   *
   * @param table the table
   */
  record Coded(CodeTable table) implements FieldKind {}

  /**
   * A measured amount.
   *
   * @param unit its unit
   * @param least the least amount that can be right for any bird of the station
   * @param most the most
   * @param decimals the most decimal places, 0 to 3
   */
  record Measured(Unit unit, BigDecimal least, BigDecimal most, int decimals)
      implements FieldKind {}
}
