package org.calamus.core.dialogue;

import java.time.Duration;
import java.util.Objects;

/**
 * How a station wants to be listened to.
 *
 * @param talk how the console is spoken to when the session begins
 * @param pauseAfter how long it is quiet, with no bird in the hand, until the console pauses by
 *     itself; zero where it never does
 */
public record Heed(Talk talk, Duration pauseAfter) {

  /**
   * The birds of one round of the nets follow each other within a minute or two, and the rounds
   * half an hour apart (common practice, no published source): five minutes without a bird are a
   * round that is over.
   */
  private static final Heed USUAL = new Heed(Talk.OPEN, Duration.ofMinutes(5));

  /** Checks the time. */
  public Heed {
    Objects.requireNonNull(talk);
    if (pauseAfter.isNegative()) {
      throw new IllegalArgumentException("a negative time: " + pauseAfter);
    }
  }

  /** The same, spoken to in another way when the session begins. */
  public Heed talking(Talk other) {
    return new Heed(other, pauseAfter);
  }

  /** What holds where the station says nothing. */
  public static Heed usual() {
    return USUAL;
  }
}
