package org.calamus.core.instrument;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Bytes of an instrument in, readings out. Immutable; the one way in which bytes become readings,
 * whether they come from a port or from a recording.
 *
 * <pre>{@code
 * InstrumentDecoder decoder = InstrumentDecoder.opened(description, now);
 * InstrumentDecoder.Step step = decoder.step(bytes, now);
 * step.decoded().forEach(...);
 * decoder = step.next();
 * }</pre>
 *
 * @param device the instrument
 * @param splitter the half line that waits for its rest
 * @param lastBytesAt when the last bytes came, or when the port was opened
 */
public record InstrumentDecoder(
    DeviceDescription device, LineSplitter splitter, Instant lastBytesAt) {

  /** Checks that every part is there. */
  public InstrumentDecoder {
    Objects.requireNonNull(device);
    Objects.requireNonNull(splitter);
    Objects.requireNonNull(lastBytesAt);
  }

  /** A decoder for a port that has just been opened. */
  public static InstrumentDecoder opened(DeviceDescription device, Instant at) {
    return new InstrumentDecoder(device, LineSplitter.opened(device.framing()), at);
  }

  /**
   * Takes bytes in.
   *
   * @param bytes what came since the last step
   * @param at when it came
   */
  public Step step(byte[] bytes, Instant at) {
    if (bytes.length == 0) {
      return new Step(this, List.of());
    }
    List<LineSplitter.Piece> pieces = new ArrayList<>();
    LineSplitter now = splitter;
    if (lastBytesAt.plus(device.framing().longestPause()).isBefore(at)) {
      LineSplitter.Step broken = now.interrupted();
      pieces.addAll(broken.pieces());
      now = broken.next();
    }
    LineSplitter.Step split = now.step(bytes);
    pieces.addAll(split.pieces());
    LineReader reader = new LineReader(device.format());
    List<Decoded> decoded = pieces.stream().map(piece -> decode(piece, reader)).toList();
    return new Step(new InstrumentDecoder(device, split.next(), at), decoded);
  }

  private static Decoded decode(LineSplitter.Piece piece, LineReader reader) {
    if (piece instanceof LineSplitter.Line line) {
      return reader.read(line.text());
    }
    if (piece instanceof LineSplitter.Dropped dropped) {
      return new Decoded.Noise(dropped.text(), dropped.why());
    }
    throw new AssertionError(piece);
  }

  /**
   * The outcome of a step.
   *
   * @param next the decoder for the next bytes
   * @param decoded what came, in order
   */
  public record Step(InstrumentDecoder next, List<Decoded> decoded) {
    /** Copies the list. */
    public Step {
      decoded = List.copyOf(decoded);
    }
  }
}
