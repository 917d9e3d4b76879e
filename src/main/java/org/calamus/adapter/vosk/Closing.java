package org.calamus.adapter.vosk;

import java.time.Duration;

/** Whether the ears shall end; who waits for something else is woken by it. */
final class Closing {

  private boolean isAsked;

  /** Asks for the end, from any thread. */
  synchronized void ask() {
    isAsked = true;
    notifyAll();
  }

  synchronized boolean isAsked() {
    return isAsked;
  }

  /** Waits for so long, or until the end is asked for. */
  synchronized void rest(Duration longest) {
    try {
      if (!isAsked) {
        wait(longest.toMillis());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      isAsked = true;
    }
  }
}
