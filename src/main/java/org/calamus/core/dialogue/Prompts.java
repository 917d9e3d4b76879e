package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;

/** The part of the dialogue that asks, and says what was not understood. */
final class Prompts {

  /** Shown of what is probably talk of other things. */
  static final String OVERHEARD = "Not understood.";

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
    String asked = state.open().map(f -> asked(state, f)).orElse("save record");
    return Step.of(state).say(taken.isEmpty() ? asked : taken + ". " + asked);
  }

  private String asked(State state, FieldId field) {
    boolean isProposed =
        field == FieldId.BAND && state.record().map(r -> r.kind().putsBand()).orElse(false);
    FieldSpec spec = setup.form().spec(field);
    return spec.spoken()
        + new Taking(setup).held(state, spec)
        + (isProposed ? new NextBand(setup).proposal(state) : "");
  }

  /** Keys were struck and not entered: what would leave their field must not lose them silently. */
  Step notEntered(State state) {
    String keys = state.face().keys();
    return Step.of(state.message(keys + " is not entered yet: Enter takes it, minus clears it."))
        .then(new Effect.Sound(Tone.NOT_UNDERSTOOD))
        .say("not entered yet");
  }

  /**
   * Something was not understood: the first time "again", then what fits, then the keypad; never
   * the same words twice in a row.
   */
  Step miss(State state, String hint) {
    return miss(state, hint, List.of());
  }

  /**
   * What is probably talk of other things is met with the tone alone, and held against no field.
   */
  static Step overheard(State state) {
    return Step.of(state.message(OVERHEARD)).then(new Effect.Sound(Tone.NOT_UNDERSTOOD));
  }

  /** What was taken before is told in the same phrase, since a second one would cut it off. */
  Step miss(State state, String hint, List<String> told) {
    Misses missed = state.face().missed().oneMore(Dialogue.askedField(state));
    String phrase =
        phrases(state, hint, missed.count()).stream()
            .filter(p -> !joined(told, p).equals(state.face().lastSaid()))
            .findFirst()
            .orElseThrow();
    String shown = "Not understood: " + phrase + ".";
    return Step.of(state.face(f -> f.withMissed(missed).withMessage(shown)))
        .then(new Effect.Sound(Tone.NOT_UNDERSTOOD))
        .say(joined(told, phrase));
  }

  /** What may be said to a miss, the best first; two at least, all different. */
  private List<String> phrases(State state, String hint, int misses) {
    String name = Dialogue.askedField(state).map(f -> setup.form().spec(f).spoken()).orElse("");
    String fitting = fitting(state, name);
    if (misses >= Misses.MOST) {
      String keypad = "use the keypad" + (name.isEmpty() ? "" : " for " + name);
      String other =
          name.isEmpty() ? "press enter or minus" : name + " on the keypad, or say its name";
      return misses % 2 == 1 ? List.of(keypad, other) : List.of(other, keypad);
    }
    List<String> all = new ArrayList<>(misses == 1 ? List.of() : List.of(fitting));
    all.add(hint.isEmpty() ? "again" : hint);
    all.add(fitting);
    all.add("not understood. " + fitting);
    return all;
  }

  private String fitting(State state, String asked) {
    if (state.question().isPresent()) {
      return Questions.answers(state.question().get());
    }
    if (asked.isEmpty()) {
      return "save record, or correction";
    }
    return howToSay(setup.form().spec(state.open().orElseThrow())) + ", or correction";
  }

  /** How a field's value is said. */
  String howToSay(FieldSpec spec) {
    if (spec.kind() instanceof FieldKind.Note) {
      return "say remarks, or type them";
    }
    if (spec.kind() instanceof FieldKind.Date) {
      return spec.spoken() + ", the day, then the month by its name";
    }
    boolean isNumber =
        spec.kind() instanceof FieldKind.Measured
            || spec.kind() instanceof FieldKind.Band
            || spec.kind() instanceof FieldKind.Time
            || spec.kind() instanceof FieldKind.Coded coded && coded.table().isNumbered();
    return isNumber ? spec.spoken() + ", digit by digit" : spec.spoken() + ", in words";
  }

  /** A value said for a field that was not understood so often that it is left to the keypad. */
  Step leftToKeypad(State state, FieldId field) {
    return miss(state, "")
        .then(
            s ->
                Step.of(
                    s.message(
                        setup.form().spec(field).label()
                            + ": strike it on the keypad, or say the field's name and try"
                            + " again.")));
  }
}
