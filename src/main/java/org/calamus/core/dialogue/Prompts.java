package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;

/** The part of the dialogue that asks, and says what was not understood. */
final class Prompts {

  private static final int PATIENCE = 2;

  private final Setup setup;

  Prompts(Setup setup) {
    this.setup = setup;
  }

  static String joined(List<String> told, String last) {
    List<String> all = new ArrayList<>(told);
    all.add(last);
    return String.join(". ", all);
  }

  /** Says what was taken, and what is asked next. */
  Step prompt(State state, String taken) {
    String asked = state.open().map(f -> setup.form().spec(f).spoken()).orElse("save record");
    return Step.of(state).say(taken.isEmpty() ? asked : taken + ". " + asked);
  }

  /** Keys were struck and not entered: what would leave their field must not lose them silently. */
  Step notEntered(State state) {
    String keys = state.face().keys();
    return Step.of(state.message(keys + " is not entered yet: Enter takes it, minus clears it."))
        .then(new Effect.Sound(Tone.NOT_UNDERSTOOD))
        .say("not entered yet");
  }

  /** Something was not understood: the first time "again", then what fits, then the keypad. */
  Step miss(State state, String hint) {
    return miss(state, hint, List.of());
  }

  /** What was taken before is told in the same phrase, since a second one would cut it off. */
  Step miss(State state, String hint, List<String> told) {
    int misses = state.face().misses() + 1;
    String asked = Dialogue.askedField(state).map(f -> setup.form().spec(f).spoken()).orElse("");
    String phrase = hint.isEmpty() ? "again" : hint;
    if (misses == PATIENCE && hint.isEmpty()) {
      phrase = fitting(state, asked);
    } else if (misses > PATIENCE) {
      phrase = "use the keypad" + (asked.isEmpty() ? "" : " for " + asked);
    }
    String shown = "Not understood: " + phrase + ".";
    return Step.of(state.face(f -> f.withMisses(misses).withMessage(shown)))
        .then(new Effect.Sound(Tone.NOT_UNDERSTOOD))
        .say(joined(told, phrase));
  }

  private static String fitting(State state, String asked) {
    if (!asked.isEmpty()) {
      return asked + ", or correction";
    }
    return state.question().isPresent() ? "say affirm or negative" : "save record, or correction";
  }
}
