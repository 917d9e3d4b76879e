package org.calamus.adapter.serial;

import java.util.Optional;

/** A serial port as bytes, so that what watches it can be tried without one. One thread's own. */
interface Wire {

  /**
   * Opens the port.
   *
   * @return empty when it is open, otherwise one sentence: what is wrong and what to do next
   */
  Optional<String> open();

  /**
   * Waits a short while for bytes.
   *
   * @return what came, empty where nothing did
   * @throws GoneException where the port has vanished
   */
  byte[] read() throws GoneException;

  /**
   * Sends bytes.
   *
   * @throws GoneException where they cannot be sent
   */
  void write(byte[] bytes) throws GoneException;

  /** Closes the port; it may be opened again. */
  void close();

  /** The port has vanished. */
  final class GoneException extends Exception {
    private static final long serialVersionUID = 1L;

    GoneException() {
      super("the port has vanished");
    }
  }
}
