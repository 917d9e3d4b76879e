package org.calamus.engine;

import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.Memos;
import org.calamus.port.RecordStore;
import org.calamus.port.Screen;
import org.calamus.port.SessionWatcher;
import org.calamus.port.UtteranceKeeper;
import org.calamus.port.Voice;

/**
 * What the engine performs its effects with.
 *
 * @param ears hears
 * @param voice speaks
 * @param store keeps the records
 * @param memos keeps spoken notes
 * @param screen shows
 * @param clock the time of day
 * @param watcher looks on
 * @param keeper keeps what is said, where that is wanted
 */
public record Ports(
    Ears ears,
    Voice voice,
    RecordStore store,
    Memos memos,
    Screen screen,
    Clock clock,
    SessionWatcher watcher,
    UtteranceKeeper keeper) {

  /** Ports of a session of which nothing said is kept. */
  public Ports(
      Ears ears,
      Voice voice,
      RecordStore store,
      Memos memos,
      Screen screen,
      Clock clock,
      SessionWatcher watcher) {
    this(ears, voice, store, memos, screen, clock, watcher, UtteranceKeeper.none());
  }
}
