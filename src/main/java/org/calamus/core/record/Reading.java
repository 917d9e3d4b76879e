package org.calamus.core.record;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * One value that an instrument sent.
 *
 * @param amount the amount with the digits as received, in {@code unit}
 * @param unit the unit, after conversion by the device description
 * @param stability what the instrument itself says of it
 * @param raw the line as received, without its terminator
 */
public record Reading(BigDecimal amount, Unit unit, Stability stability, String raw) {

  /** Checks that every part is there. */
  public Reading {
    Objects.requireNonNull(amount);
    Objects.requireNonNull(unit);
    Objects.requireNonNull(stability);
    Objects.requireNonNull(raw);
  }

  /** What an instrument says of its own reading. */
  public enum Stability {
    /** The instrument marks the reading as stable. */
    STABLE,
    /** The instrument marks the reading as still moving. */
    MOVING,
    /** The instrument does not say. */
    UNSTATED
  }
}
