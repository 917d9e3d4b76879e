package org.calamus.port;

import java.util.List;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.View;

/**
 * Looks on while a session runs: the demonstration waits for its turn by it, and a test or a
 * benchmark measures by it. Called on the engine's thread after each step; must return at once.
 */
@FunctionalInterface
public interface SessionWatcher {
  /**
   * A step was taken.
   *
   * @param event what happened
   * @param effects what was done
   * @param view what the screen shows now
   */
  void stepped(Event event, List<Effect> effects, View view);
}
