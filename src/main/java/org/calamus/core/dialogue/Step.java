package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * What one event led to.
 *
 * @param state the new state
 * @param effects what is to be done, in order
 */
public record Step(State state, List<Effect> effects) {

  /** Copies the list. */
  public Step {
    effects = List.copyOf(effects);
  }

  static Step of(State state) {
    return new Step(state, List.of());
  }

  Step then(Effect effect) {
    List<Effect> more = new ArrayList<>(effects);
    more.add(effect);
    return new Step(state, more);
  }

  Step then(Function<State, Step> next) {
    Step after = next.apply(state);
    List<Effect> more = new ArrayList<>(effects);
    more.addAll(after.effects);
    return new Step(after.state, more);
  }

  /** Speaks a phrase and remembers it for "say again". */
  Step say(String phrase) {
    return then(s -> of(s.face(f -> f.withLastSaid(phrase))).then(new Effect.Say(phrase)));
  }
}
