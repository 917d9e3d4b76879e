package org.calamus.port;

import java.time.Instant;

/** The time of day. Adapters stamp their events with it; a test gives its own. */
@FunctionalInterface
public interface Clock {
  /** Now, in UTC. */
  Instant now();
}
