package org.calamus.core.instrument;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.record.Unit;

/**
 * The units that instruments send, each with the exact factor to ours.
 *
 * <p>Sources: the decimal prefixes of the International System of Units; an inch is 25.4 mm exactly
 * since the international yard and pound agreement of 1959.
 */
public enum SentUnit {
  /** Gram. */
  GRAM("g", Unit.GRAM, "1"),
  /** Kilogram. */
  KILOGRAM("kg", Unit.GRAM, "1E+3"),
  /** Milligram. */
  MILLIGRAM("mg", Unit.GRAM, "1E-3"),
  /** Millimetre. */
  MILLIMETRE("mm", Unit.MILLIMETRE, "1"),
  /** Centimetre. */
  CENTIMETRE("cm", Unit.MILLIMETRE, "1E+1"),
  /** Inch. */
  INCH("in", Unit.MILLIMETRE, "25.4");

  private final String symbol;
  private final Unit ours;
  private final BigDecimal factor;

  SentUnit(String symbol, Unit ours, String factor) {
    this.symbol = symbol;
    this.ours = ours;
    this.factor = new BigDecimal(factor);
  }

  /** Finds a unit by the symbol that device files use. */
  public static Optional<SentUnit> ofSymbol(String symbol) {
    String wanted = symbol.toLowerCase(Locale.ROOT);
    return Stream.of(values()).filter(unit -> unit.symbol.equals(wanted)).findFirst();
  }

  /** The symbol that device files use. */
  public String symbol() {
    return symbol;
  }

  /** The unit in which Calamus keeps it. */
  public Unit ours() {
    return ours;
  }

  /**
   * Converts an amount. Where the unit is ours the digits stay as they are; a power of ten moves
   * the point and leaves the digits: 0.0223 kg are 22.3 g.
   */
  public BigDecimal toOurs(BigDecimal amount) {
    if (factor.compareTo(BigDecimal.ONE) == 0) {
      return amount;
    }
    BigDecimal converted = amount.multiply(factor);
    return converted.scale() < 0 ? converted.setScale(0) : converted;
  }
}
