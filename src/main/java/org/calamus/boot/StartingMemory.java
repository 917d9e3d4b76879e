package org.calamus.boot;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * The memory that starting takes. Tables, vocabularies and grammars are made of some hundred
 * megabytes that are of no use a second later; a session that runs makes so little that the machine
 * would keep all of it until the evening. Asked to collect once, it gives most of it back, which is
 * what a small field computer is short of (docs/benchmarks.md says how much).
 */
final class StartingMemory {

  /** Until then the ears are up and the first field is asked, on a slow machine too. */
  private static final Duration SETTLED = Duration.ofSeconds(4);

  private StartingMemory() {}

  /** Gives it back once the start is over; does not wait for it. */
  static void giveBackLater() {
    CompletableFuture.delayedExecutor(SETTLED.toMillis(), TimeUnit.MILLISECONDS)
        .execute(System::gc);
  }
}
