package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Unit;
import org.calamus.core.speech.Command;

/** What may be said or pressed now, what is likeliest first; made from the table of commands. */
final class Hints {

  private static final Set<Command> ANSWERS =
      EnumSet.of(Command.AFFIRM, Command.NEGATIVE, Command.OUT_OF_ORDER);

  private static final Set<Command> REASONS =
      java.util.Arrays.stream(Command.values())
          .filter(Command::isReason)
          .collect(java.util.stream.Collectors.toUnmodifiableSet());

  /** What leads on from a field, and stands before the many that are rarely wanted. */
  private static final Set<Command> ONWARD = EnumSet.of(Command.CORRECT, Command.NEXT);

  private final Setup setup;

  Hints(Setup setup) {
    this.setup = setup;
  }

  List<View.Hint> of(State state) {
    if (state.face().isMenu()) {
      return List.of(new View.Hint("", "two digits", "field"), new View.Hint("", "Enter", "close"));
    }
    List<View.Hint> hints = new ArrayList<>(new Heeding(setup).hints(state));
    if (Pages.isShown(state)) {
      hints.addAll(page(state));
      return hints;
    }
    if (state.question().isPresent()) {
      hints.addAll(answers(state, state.question().get()));
    } else if (state.open().isEmpty()) {
      hints.add(new View.Hint("save record", "Enter", ""));
    }
    Dialogue.askedField(state).map(setup.form()::spec).ifPresent(s -> hints.add(value(s, state)));
    if (state.question().isEmpty()) {
      if (new NumbersPage(setup).isAsked(state)) {
        hints.add(new View.Hint("", Sayable.keys(Command.PAGE_NUMBERS), "list of species"));
      }
      hints.addAll(commands(state, ONWARD));
      hints.add(new View.Hint("", "+", "more"));
    }
    hints.addAll(commands(state, rest()));
    hints.add(new View.Hint("released", "+/", "bird goes, values stay"));
    return hints;
  }

  /** What moves on a page, and to another. */
  private List<View.Hint> page(State state) {
    List<View.Hint> hints = new ArrayList<>();
    // the phrases are long: the keys come first, so that all of them are seen in a narrow window
    hints.add(new View.Hint("", Sayable.keys(Command.PAGE_CAPTURE), "capture"));
    if (Pages.hasNumbers(state)) {
      hints.add(new View.Hint("", "digits", "row"));
      hints.add(new View.Hint("", Sayable.keys(Command.AFFIRM), "open it"));
    } else if (Pages.isRecord(state)) {
      hints.add(new View.Hint("", Sayable.keys(Command.AFFIRM), "correct it"));
    }
    hints.add(new View.Hint("", Sayable.keys(Command.PAGE_ON), "next rows"));
    hints.add(new View.Hint("", Sayable.keys(Command.PAGE_BACK), "before"));
    hints.addAll(commands(state, EnumSet.range(Command.PAGE_CAPTURE, Command.PAGE_CHOOSE)));
    hints.addAll(commands(state, EnumSet.range(Command.PAGE_SESSION, Command.PAGE_COMMANDS)));
    hints.add(new View.Hint("", "+", "more"));
    return hints;
  }

  private List<View.Hint> answers(State state, Question question) {
    List<View.Hint> hints = new ArrayList<>();
    if (question instanceof Question.Skipped) {
      hints.add(new View.Hint("band lost", "+1", ""));
      hints.add(new View.Hint("band destroyed", "+2", ""));
    }
    Set<Command> fitting = EnumSet.copyOf(ANSWERS);
    if (question instanceof Question.Reason) {
      fitting.addAll(REASONS);
    }
    if (BandQuestions.isBand(question)
        || question instanceof Question.Which
        || question instanceof Question.Reason) {
      fitting.remove(Command.AFFIRM);
    }
    hints.addAll(commands(state, fitting));
    return hints;
  }

  private static Set<Command> rest() {
    Set<Command> rest = EnumSet.allOf(Command.class);
    rest.removeAll(ANSWERS);
    rest.removeAll(ONWARD);
    rest.removeAll(REASONS);
    return rest;
  }

  private List<View.Hint> commands(State state, Set<Command> commands) {
    return Sayable.ALL.stream()
        .filter(s -> commands.contains(s.command()) && s.unavailable(state).isEmpty())
        .map(
            s -> new View.Hint(setup.words(s.command()).orElse(s.meaning()), s.keys(), s.meaning()))
        .toList();
  }

  private View.Hint value(FieldSpec spec, State state) {
    if (spec.kind() instanceof FieldKind.Measured measured) {
      // a weight is said with its point, which is what a newcomer does not know how to strike
      return measured.unit() == Unit.GRAM
          ? new View.Hint("two two point three", "22.3 Enter", spec.spoken())
          : new View.Hint("nine two", "92 Enter", spec.spoken());
    }
    if (spec.kind() instanceof FieldKind.Time) {
      return new View.Hint("zero eight four zero", "0840 Enter", spec.spoken());
    }
    if (spec.kind() instanceof FieldKind.Date) {
      return new View.Hint("one six june", "0616 Enter", spec.spoken());
    }
    if (spec.kind() instanceof FieldKind.Note) {
      return new View.Hint("", "space", "speak or type");
    }
    if (spec.kind() instanceof FieldKind.Band) {
      return isNextMeant(spec.id(), state)
          ? new View.Hint("last three", "digits Enter", "band")
          : new View.Hint("all digits", "digits Enter", "band");
    }
    return new View.Hint("its name", "number Enter", spec.spoken());
  }

  /** Whether the band asked is one of the station's string, and not one that a bird came with. */
  private boolean isNextMeant(FieldId field, State state) {
    boolean isPut = state.record().map(r -> r.kind().putsBand()).orElse(true);
    return field == FieldId.BAND && isPut && new NextBand(setup).of(state).isPresent();
  }
}
