package org.calamus.core.record;

/** The units in which Calamus keeps measured values. */
public enum Unit {
  /** Lengths. */
  MILLIMETRE("mm"),
  /** Masses. */
  GRAM("g");

  private final String symbol;

  Unit(String symbol) {
    this.symbol = symbol;
  }

  /** The symbol as printed behind a value. */
  public String symbol() {
    return symbol;
  }
}
