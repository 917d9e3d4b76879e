package org.calamus.core.effort;

import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A net was opened or closed.
 *
 * @param id the number of the event, from 1; every new one has a higher number
 * @param net the code of the net
 * @param what what was done
 * @param at when it was done (UTC)
 * @param enteredAt when that was said or struck (UTC)
 * @param bander the initials of who entered it
 * @param supersedes the event whose time this one corrects; empty where it corrects none
 */
public record NetEvent(
    long id,
    String net,
    What what,
    Instant at,
    Instant enteredAt,
    String bander,
    Optional<Long> supersedes) {

  /** Checks the parts. */
  public NetEvent {
    Objects.requireNonNull(what);
    Objects.requireNonNull(at);
    Objects.requireNonNull(enteredAt);
    Objects.requireNonNull(supersedes);
    if (id < 1 || net.isBlank() || bander.isBlank()) {
      throw new IllegalArgumentException("an event of a net: " + id + " " + net + " " + bander);
    }
  }

  /** What is done to a net. */
  public enum What {
    /** It was opened. */
    OPENED,
    /** It was closed, furled or taken down. */
    CLOSED;

    /** As stored and shown: {@code opened}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
