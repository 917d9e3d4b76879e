package org.calamus.core.instrument;

import java.time.Duration;

/**
 * How to ask an instrument that speaks only when asked.
 *
 * @param request the characters to send, ASCII, with the terminator that the instrument wants
 * @param interval the time from one request to the next, at least 50 ms
 */
public record Polling(String request, Duration interval) {

  /** Checks the request and the interval. */
  public Polling {
    if (request.isEmpty() || request.chars().anyMatch(c -> c > 0x7F)) {
      throw new IllegalArgumentException("a request has at least one character, all of them ASCII");
    }
    if (interval.compareTo(Duration.ofMillis(50)) < 0) {
      throw new IllegalArgumentException("there are at least 50 ms between two requests");
    }
  }
}
