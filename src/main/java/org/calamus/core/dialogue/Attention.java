package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether what is said is for the console.
 *
 * @param talk how the console is spoken to
 * @param isPaused whether it only waits to be told to go on
 * @param openSince since when the talk key has the ears open; empty where it has not
 * @param activeAt when the console was last of use
 * @param rejected when speech was not for the console or not understood, since it was last
 *     understood
 * @param isDecided whether the bander has chosen open listening, so that the console leaves it so
 */
record Attention(
    Talk talk,
    boolean isPaused,
    Optional<Instant> openSince,
    Instant activeAt,
    List<Instant> rejected,
    boolean isDecided) {

  /** How close together rejected speech must be to be other people's talk. */
  private static final Duration NEAR = Duration.ofMinutes(1);

  /**
   * A bander who is not understood gets three answers that help and is sent to the keypad with the
   * third; a fourth within the minute is somebody else.
   */
  private static final int TOO_OFTEN = 4;

  Attention {
    rejected = List.copyOf(rejected);
  }

  static Attention atStart() {
    return new Attention(Talk.OPEN, false, Optional.empty(), Instant.EPOCH, List.of(), false);
  }

  /** Whether the session has begun; before that nobody can have left the console unused. */
  boolean hasBegun() {
    return activeAt.isAfter(Instant.EPOCH);
  }

  /** The bander, or the station, has chosen; what was paused goes on. */
  Attention withTalk(Talk chosen, Instant at) {
    boolean isOpen = chosen == Talk.OPEN;
    return new Attention(chosen, false, Optional.empty(), at, List.of(), isDecided || isOpen);
  }

  Attention paused() {
    return new Attention(talk, true, Optional.empty(), activeAt, List.of(), isDecided);
  }

  Attention resumed(Instant at) {
    return new Attention(talk, false, Optional.empty(), at, List.of(), isDecided);
  }

  /** The talk key was pressed. */
  Attention opened(Instant at) {
    return new Attention(talk, false, Optional.of(at), at, rejected, isDecided);
  }

  /** What the talk key had opened is over. */
  Attention closed() {
    return new Attention(talk, isPaused, Optional.empty(), activeAt, rejected, isDecided);
  }

  Attention active(Instant at) {
    return new Attention(talk, isPaused, openSince, at, rejected, isDecided);
  }

  /** Speech was understood. */
  Attention understood(Instant at) {
    return new Attention(talk, isPaused, openSince, at, List.of(), isDecided);
  }

  /** Speech was not for the console, or not understood. */
  Attention rejecting(Instant at) {
    List<Instant> near =
        Stream.concat(rejected.stream().filter(r -> r.plus(NEAR).isAfter(at)), Stream.of(at))
            .toList();
    return new Attention(talk, isPaused, openSince, activeAt, near, isDecided);
  }

  /** Whether other people are talking, as it seems, and nobody decided to listen nevertheless. */
  boolean isAmongOthers() {
    return talk == Talk.OPEN && !isDecided && rejected.size() >= TOO_OFTEN;
  }

  /** Whether the talk key must be pressed before anything is said. */
  boolean wantsKey() {
    return talk == Talk.KEY && openSince.isEmpty();
  }
}
