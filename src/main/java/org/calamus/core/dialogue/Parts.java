package org.calamus.core.dialogue;

import java.util.Optional;

/** The part of the dialogue that tells which parts of the console work and which do not. */
final class Parts {

  /** The failure itself stands with the part that is down, for as long as it is. */
  private static final String NOT_STORED =
      "Not stored yet. Go on: the values are kept here and stored as soon as that works.";

  /** Everybody at the table should know. */
  private static final String KEPT = "What is said at the table is kept in the data folder, in ";

  private final Setup setup;
  private final Prompts prompts;

  Parts(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
  }

  /** A part works. */
  State up(State state, Event.PartUp up) {
    State told = healthy(state, new View.Health(up.part(), true, up.name()), up.port());
    if (up.part() == Part.KEEPER) {
      return told.message(KEPT + up.name() + ".");
    }
    if (up.part() == Part.EARS) {
      return new Microphones(setup).heard(told, up.name());
    }
    boolean isStoredNow = up.part() == Part.STORE && state.face().message().startsWith(NOT_STORED);
    return isStoredNow
        ? told.message(state.face().message().replace(NOT_STORED, "Stored now."))
        : told;
  }

  /** Of several instruments each has its own health. */
  private static State healthy(State state, View.Health part, Optional<String> port) {
    return state.console(
        c -> port.map(p -> c.withInstrument(p, part)).orElseGet(() -> c.withHealth(part)));
  }

  /**
   * A part that worked and no longer does is told by a tone, too. A scale that went away in
   * mid-weighing has settled nothing: what it had sent is forgotten.
   */
  static Step down(State state, Event.PartDown down) {
    boolean wasUp = state.console().isUp(down.part(), down.port());
    State told = healthy(state, new View.Health(down.part(), false, down.sentence()), down.port());
    Step step =
        Step.of(
            down.part() == Part.SCALE ? told.console(c -> c.withoutReading(down.port())) : told);
    return wasUp ? step.then(new Effect.Sound(Tone.LOOK_HERE)) : step;
  }

  /**
   * A value that could not be stored stays in the record and is held until it can be; the field
   * that is asked now is named, so that the value is not given to it once more.
   */
  Step storeFailed(State state, Event.StoreFailed failed) {
    View.Health down = new View.Health(Part.STORE, false, failed.sentence());
    boolean isSaving = state.face().message().equals(Saving.SAVING);
    State told =
        state
            .console(c -> c.withHealth(down))
            .withOpen(isSaving ? Optional.empty() : state.open())
            .message(isSaving ? NOT_STORED + " Affirm, or Enter, saves again." : NOT_STORED)
            .face(Face::withoutBig);
    Step look = Step.of(told).then(new Effect.Sound(Tone.LOOK_HERE));
    return told.question().isPresent()
        ? look.say("not stored yet. a question is open. look at the screen")
        : look.then(s -> prompts.prompt(s, "not stored yet"));
  }
}
