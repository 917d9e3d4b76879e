package org.calamus.core.hearing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The checks of microphones that a station has made.
 *
 * @param checks in any order
 */
public record PastChecks(List<MicrophoneCheck> checks) {

  /** Copies the list. */
  public PastChecks {
    checks = List.copyOf(checks);
  }

  /** The last check of a microphone; empty where it was never checked. */
  public Optional<MicrophoneCheck> last(String microphone) {
    return checks.stream()
        .filter(c -> c.microphone().equals(microphone))
        .max(Comparator.comparing(MicrophoneCheck::at));
  }
}
