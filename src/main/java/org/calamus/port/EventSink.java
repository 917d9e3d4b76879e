package org.calamus.port;

import org.calamus.core.dialogue.Event;

/**
 * Where adapters put what happened. May be called from any thread; never blocks for long; after the
 * engine has stopped it drops what it is given.
 */
@FunctionalInterface
public interface EventSink {
  /** Hands an event to the engine. */
  void post(Event event);
}
