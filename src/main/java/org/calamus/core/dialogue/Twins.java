package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/**
 * The question which of two values that sound alike was meant. Only its digits answer it: "affirm"
 * could mean either, and the same word again would leave as much in doubt as before.
 */
final class Twins {

  private final Setup setup;

  Twins(Setup setup) {
    this.setup = setup;
  }

  Step ask(State state, Question.Which which, List<String> told) {
    boolean isAgain = state.question().equals(Optional.of(which));
    State asked =
        state
            .withQuestion(Optional.of(which))
            .withOpen(Optional.of(which.field()))
            .face(f -> f.withBig("", "").withMessage("").withKeys(""));
    String phrase = isAgain ? "digits only. " + answers(which) : answers(which);
    return Step.of(asked)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, setup.form().spec(which.field()).spoken() + ", " + phrase));
  }

  /** What answers the question. */
  static String answers(Question.Which which) {
    return digits(which.one())
        + ", or "
        + digits(which.other())
        + (which.one() instanceof FieldValue.Day ? ". say the day in digits" : ". say the digits");
  }

  private static String digits(FieldValue value) {
    if (value instanceof FieldValue.Day day) {
      return Spoken.date(day.date());
    }
    return value instanceof FieldValue.Measure measure
        ? Spoken.number(measure.amount())
        : Spoken.characters(value.text());
  }

  /** The question in words, as the screen shows it. */
  String shown(Question.Which which) {
    return setup.form().spec(which.field()).label()
        + " "
        + which.one().text()
        + " or "
        + which.other().text()
        + "? They sound alike: say the digits, or strike them.";
  }
}
