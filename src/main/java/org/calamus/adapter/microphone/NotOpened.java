package org.calamus.adapter.microphone;

import java.io.IOException;
import java.util.Optional;
import javax.sound.sampled.LineUnavailableException;
import org.calamus.port.AudioSource.AudioException;

/** Says why no microphone could be opened. */
final class NotOpened {

  private static final String OTHERWISE =
      "; close it there, or name another microphone in station.toml.";

  private NotOpened() {}

  /**
   * The exception with the sentence for the user.
   *
   * @param cause what the last attempt threw: a line that is there and is refused is in use, as far
   *     as Java Sound says, or its sound system does not answer
   * @param holder the program that holds a microphone, where the system names it
   */
  static AudioException because(Exception cause, Optional<String> holder) {
    if (holder.isPresent()) {
      return new AudioException(
          "Another program, " + holder.get() + ", is using the microphone" + OTHERWISE, cause);
    }
    return new AudioException(
        isRefused(cause)
            ? "The microphone cannot be opened, as when another program is using it; close calls and"
                + " recorders, or plug it in again."
            : "No microphone can be opened; plug one in, or close the program that uses it.",
        cause);
  }

  private static boolean isRefused(Throwable cause) {
    return cause instanceof LineUnavailableException
        || cause instanceof IOException
        || cause.getCause() != null && isRefused(cause.getCause());
  }
}
