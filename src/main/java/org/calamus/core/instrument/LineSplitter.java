package org.calamus.core.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.calamus.core.instrument.Framing.Beginning;
import org.calamus.core.instrument.Framing.FixedLength;
import org.calamus.core.instrument.Framing.HighBit;
import org.calamus.core.instrument.Framing.Terminated;

/**
 * Cuts a stream of bytes into lines. Immutable: {@link #step} gives the splitter for the next
 * bytes. The lines are the same whatever the portions in which the bytes come.
 *
 * @param framing how the bytes fall into lines
 * @param gathered the front of the line that is not yet ended
 * @param state what becomes of that line
 */
public record LineSplitter(Framing framing, String gathered, State state) {

  /** Stands for a byte that is no ASCII character. */
  private static final char DAMAGED = '\uFFFD';

  /** Checks that every part is there. */
  public LineSplitter {
    Objects.requireNonNull(framing);
    Objects.requireNonNull(gathered);
    Objects.requireNonNull(state);
  }

  /** What becomes of the line that is being gathered. */
  public enum State {
    /** It is given out at its end. */
    WHOLE,
    /** It is the first after the port was opened and is dropped at its end. */
    MAY_BE_CUT,
    /** It was too long and has been dropped; the rest of it is passed over. */
    OVERLONG
  }

  /** What a step gives. */
  public sealed interface Piece {}

  /**
   * A whole line.
   *
   * @param text its characters, without the terminator; never empty
   */
  public record Line(String text) implements Piece {}

  /**
   * Bytes that are no line.
   *
   * @param text what there was of them
   * @param why why they were dropped
   */
  public record Dropped(String text, String why) implements Piece {}

  /**
   * The outcome of a step.
   *
   * @param next the splitter for the next bytes
   * @param pieces what was completed, in order
   */
  public record Step(LineSplitter next, List<Piece> pieces) {
    /** Copies the list. */
    public Step {
      pieces = List.copyOf(pieces);
    }
  }

  /** A splitter for a port that has just been opened. */
  public static LineSplitter opened(Framing framing) {
    return new LineSplitter(
        framing, "", framing.beginning() == Beginning.MAY_BE_CUT ? State.MAY_BE_CUT : State.WHOLE);
  }

  /** Takes bytes in and gives out the lines that they complete. */
  public Step step(byte[] bytes) {
    List<Piece> pieces = new ArrayList<>();
    LineSplitter now = this;
    StringBuilder line = new StringBuilder(gathered);
    for (byte each : bytes) {
      if (each == 0) {
        continue;
      }
      now = now.take(character(each), line, pieces);
    }
    return new Step(new LineSplitter(framing, line.toString(), now.state), pieces);
  }

  /** Forgets the half line: the stream was silent for too long in the middle of it. */
  public Step interrupted() {
    if (gathered.isEmpty()) {
      return new Step(this, List.of());
    }
    return new Step(
        new LineSplitter(framing, "", State.WHOLE),
        List.of(new Dropped(gathered, "the line broke off in the middle")));
  }

  private char character(byte raw) {
    int bits = framing.highBit() == HighBit.STRIP ? raw & 0x7F : raw & 0xFF;
    return bits < 0x80 ? (char) bits : DAMAGED;
  }

  private LineSplitter take(char next, StringBuilder line, List<Piece> pieces) {
    if (framing.ending() instanceof FixedLength fixed) {
      line.append(next);
      return line.length() < fixed.characters() ? this : end(line, 0, pieces);
    }
    if (framing.ending() instanceof Terminated terminated) {
      if (terminated.terminator().isEndedBy(line, next)) {
        return end(line, terminated.terminator().gatheredPart(), pieces);
      }
      line.append(next);
      return line.length() - terminated.terminator().gatheredPart() > framing.longestLine()
          ? cutOff(line, pieces)
          : this;
    }
    throw new AssertionError(framing.ending());
  }

  private LineSplitter cutOff(StringBuilder line, List<Piece> pieces) {
    if (state != State.OVERLONG) {
      pieces.add(new Dropped(line.toString(), "the line is too long"));
    }
    // the last character stays: it may be the first half of a two-character terminator
    line.delete(0, line.length() - 1);
    return new LineSplitter(framing, "", State.OVERLONG);
  }

  private LineSplitter end(StringBuilder line, int terminatorLength, List<Piece> pieces) {
    String text = line.substring(0, line.length() - terminatorLength);
    line.setLength(0);
    if (state != State.OVERLONG && !text.isEmpty()) {
      pieces.add(
          state == State.MAY_BE_CUT
              ? new Dropped(text, "the first line after opening may lack its front")
              : checked(text));
    }
    return new LineSplitter(framing, "", State.WHOLE);
  }

  private static Piece checked(String text) {
    if (text.indexOf(DAMAGED) >= 0) {
      return new Dropped(text, "a byte of the line is no ASCII character");
    }
    if (text.chars().anyMatch(c -> c != '\t' && (c < ' ' || c == 0x7F))) {
      return new Dropped(text, "a control character stands in the line");
    }
    return new Line(text);
  }
}
