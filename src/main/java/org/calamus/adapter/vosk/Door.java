package org.calamus.adapter.vosk;

/**
 * Whether the ears are open. The engine's thread shuts and opens; the ears' thread asks with every
 * block. Shutting counts up, so that ears which were shut and opened between two blocks still
 * forget what they heard before.
 */
final class Door {

  private boolean isShut;
  private long tail;
  private long shutCount;

  /** Lets no sound in from now on. */
  synchronized void shut() {
    isShut = true;
    shutCount++;
  }

  /** Lets sound in after so many samples more. Does nothing where it is open. */
  synchronized void open(long tailSamples) {
    if (isShut) {
      isShut = false;
      tail = tailSamples;
    }
  }

  /** Lets sound in at once, also within a tail. */
  synchronized void openAtOnce() {
    isShut = false;
    tail = 0;
  }

  /** Whether a block that has just arrived may be heard; the ears' thread only. */
  synchronized boolean admits(int samples) {
    if (isShut) {
      return false;
    }
    if (tail > 0) {
      tail -= samples;
      return false;
    }
    return true;
  }

  /** How often it was shut. */
  synchronized long shutCount() {
    return shutCount;
  }

  /** Does something unless the door was shut since the count was taken. Must be quick. */
  synchronized void ifNotShutSince(long count, Runnable action) {
    if (count == shutCount) {
      action.run();
    }
  }
}
