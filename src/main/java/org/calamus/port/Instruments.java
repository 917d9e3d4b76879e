package org.calamus.port;

/**
 * The instruments on serial ports. Posts {@code ReadingArrived}, {@code PartUp} and {@code
 * PartDown}; looks for a lost port again by itself until closed.
 */
public interface Instruments extends AutoCloseable {
  /** Opens the ports and begins to read. */
  void start(EventSink sink);

  @Override
  void close();
}
