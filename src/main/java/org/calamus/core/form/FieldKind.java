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
   * One or more codes of a table.
   *
   * @param table the table
   * @param most how many at most, 2 or more
   */
  record CodedMany(CodeTable table, int most) implements FieldKind {}

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

  /** A time of day, as the clock at the station shows it. */
  record Time() implements FieldKind {}

  /** A day of the station's calendar. */
  record Date() implements FieldKind {}

  /** Free remarks. */
  record Note() implements FieldKind {}
}
