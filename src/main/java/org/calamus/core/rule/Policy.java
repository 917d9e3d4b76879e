package org.calamus.core.rule;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;

/**
 * What a station decided that the rules and the timer go by.
 *
 * @param zone its time zone, in which days and years begin
 * @param warnAfter how long a bird is in the hand before the console warns
 * @param limit how long a bird may be in the hand
 * @param netsOpenedAt when the nets are opened at the earliest; empty where that is not said
 */
public record Policy(
    ZoneId zone, Duration warnAfter, Duration limit, Optional<LocalTime> netsOpenedAt) {

  /** Checks that every part is there. */
  public Policy {
    Objects.requireNonNull(zone);
    Objects.requireNonNull(warnAfter);
    Objects.requireNonNull(limit);
    Objects.requireNonNull(netsOpenedAt);
  }
}
