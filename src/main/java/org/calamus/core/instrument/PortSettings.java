package org.calamus.core.instrument;

import java.util.Objects;

/**
 * How to open the serial port of an instrument.
 *
 * @param path the port, such as {@code /dev/ttyUSB0} or {@code COM3}; empty where the user is to
 *     give it
 * @param baud bits a second, 50 to 4,000,000
 * @param dataBits 7 or 8
 * @param parity the parity bit
 * @param stopBits 1 or 2
 * @param flow who may stop the flow of bytes
 * @param dtr the level of the DTR line, from which some gauge interfaces draw their power
 * @param rts the level of the RTS line, likewise
 */
public record PortSettings(
    String path,
    int baud,
    int dataBits,
    Parity parity,
    int stopBits,
    Flow flow,
    Level dtr,
    Level rts) {

  /** Checks the ranges. */
  public PortSettings {
    Objects.requireNonNull(path);
    Objects.requireNonNull(parity);
    Objects.requireNonNull(flow);
    Objects.requireNonNull(dtr);
    Objects.requireNonNull(rts);
    if (baud < 50 || baud > 4_000_000) {
      throw new IllegalArgumentException("the speed is 50 to 4000000 baud");
    }
    if (dataBits != 7 && dataBits != 8) {
      throw new IllegalArgumentException("there are 7 or 8 data bits");
    }
    if (stopBits != 1 && stopBits != 2) {
      throw new IllegalArgumentException("there are 1 or 2 stop bits");
    }
  }

  /** Parity bits. */
  public enum Parity {
    /** No parity bit. */
    NONE,
    /** Even. */
    EVEN,
    /** Odd. */
    ODD,
    /** Always one. */
    MARK,
    /** Always zero. */
    SPACE
  }

  /** Kinds of flow control. */
  public enum Flow {
    /** None. */
    NONE,
    /** By the RTS and CTS lines. */
    RTS_CTS,
    /** By the DTR and DSR lines. */
    DTR_DSR,
    /** By the characters XON and XOFF. */
    XON_XOFF
  }

  /** Levels of a control line. */
  public enum Level {
    /** Raised. */
    ON,
    /** Lowered. */
    OFF
  }
}
