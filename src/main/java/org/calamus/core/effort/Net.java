package org.calamus.core.effort;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * A mist net of the station.
 *
 * @param code its code, as a record's net field has it; not blank
 * @param name how it is said; the code where it has no name
 * @param metres its length in metres, more than nothing
 */
public record Net(String code, String name, BigDecimal metres) {

  /**
   * The length of the net by which effort is counted, in metres: a net of 12 m that is open for one
   * hour is one net-hour (DeSante and others, MAPS Manual, second-hand).
   */
  public static final BigDecimal USUAL_METRES = new BigDecimal("12");

  /** Checks the parts. */
  public Net {
    Objects.requireNonNull(name);
    if (code.isBlank() || metres.signum() <= 0) {
      throw new IllegalArgumentException("a net has a code and a length: " + code + " " + metres);
    }
  }

  /** A net of the usual length without a name of its own. */
  public static Net of(String code) {
    return new Net(code, code, USUAL_METRES);
  }
}
