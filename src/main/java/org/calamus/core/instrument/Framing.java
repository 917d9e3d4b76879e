package org.calamus.core.instrument;

import java.time.Duration;
import java.util.Objects;

/**
 * How the bytes of an instrument fall into lines. All lines are ASCII; NUL bytes are dropped.
 *
 * @param ending what ends a line
 * @param highBit what the eighth bit of a byte means
 * @param beginning what to make of the first line after the port was opened
 * @param longestLine the most characters a line may have; a longer one is dropped, 1 to 1000
 * @param longestPause the longest pause inside a line; after a longer one the half line is dropped,
 *     so that the front of one value never joins the back of another
 */
public record Framing(
    Ending ending, HighBit highBit, Beginning beginning, int longestLine, Duration longestPause) {

  /** Room for every line published in the manuals read, the longest of which has 34 characters. */
  public static final int USUAL_LONGEST_LINE = 80;

  /**
   * Well above the time between two characters at 150 baud (70 ms) and the delay of a USB adapter
   * (16 ms), well below the time in which a plug can be pulled and put back. Common practice, no
   * published source.
   */
  public static final Duration USUAL_LONGEST_PAUSE = Duration.ofMillis(500);

  /** Checks the limits. */
  public Framing {
    Objects.requireNonNull(ending);
    Objects.requireNonNull(highBit);
    Objects.requireNonNull(beginning);
    if (longestLine < 1 || longestLine > 1000) {
      throw new IllegalArgumentException("the longest line has 1 to 1000 characters");
    }
    if (longestPause.isNegative() || longestPause.isZero()) {
      throw new IllegalArgumentException("the longest pause is above zero");
    }
  }

  /** Lines that end as given, eight plain bits, the first line believed, the usual limits. */
  public static Framing endedBy(Terminator terminator) {
    return new Framing(
        new Terminated(terminator),
        HighBit.REFUSE,
        Beginning.WHOLE,
        USUAL_LONGEST_LINE,
        USUAL_LONGEST_PAUSE);
  }

  /** What ends a line. */
  public sealed interface Ending {}

  /**
   * A terminator ends the line.
   *
   * @param terminator which
   */
  public record Terminated(Terminator terminator) implements Ending {
    /** Checks that it is there. */
    public Terminated {
      Objects.requireNonNull(terminator);
    }
  }

  /**
   * The line ends after a number of characters. Where some are lost, the pause before the next line
   * sets the count right.
   *
   * @param characters how many, at least 1
   */
  public record FixedLength(int characters) implements Ending {
    /** Checks the count. */
    public FixedLength {
      if (characters < 1) {
        throw new IllegalArgumentException("a line has at least one character");
      }
    }
  }

  /** What the eighth bit of a byte means. */
  public enum HighBit {
    /** It is a parity bit and is cleared. */
    STRIP,
    /** It is never set; a line with such a byte is damaged and is dropped. */
    REFUSE
  }

  /** What to make of the first line after the port was opened. */
  public enum Beginning {
    /** It is read: its pattern would not fit if its front were missing. */
    WHOLE,
    /** It is dropped: what is left of a line that lost its front could pass for a value. */
    MAY_BE_CUT
  }
}
