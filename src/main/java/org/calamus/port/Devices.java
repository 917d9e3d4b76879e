package org.calamus.port;

import java.util.List;
import org.calamus.core.instrument.DeviceDescription;

/**
 * The kinds of instrument that Calamus knows.
 *
 * <pre>{@code
 * devices.names();                             // to choose from
 * devices.device("two-letter-header");         // one of them, checked with its own samples
 * }</pre>
 *
 * Used from one thread.
 */
public interface Devices {

  /** The names to choose from, in alphabetical order. */
  List<String> names();

  /**
   * Reads a description and checks it with the samples in its file.
   *
   * @param name one of {@link #names}, or the path of a device file, which ends in {@code .toml}
   * @throws DeviceException with one sentence a line, each naming file, line and column, where the
   *     description is missing or has mistakes
   */
  DeviceDescription device(String name);

  /** A device file or recording cannot be used; each line of the message is one sentence. */
  final class DeviceException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with the sentences: what is wrong, where, and what to do next. */
    public DeviceException(String sentences) {
      super(sentences);
    }

    /** Made with the sentence where another exception lies behind it. */
    public DeviceException(String sentence, Throwable cause) {
      super(sentence, cause);
    }
  }
}
