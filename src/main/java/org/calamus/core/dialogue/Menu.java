package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Release;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Command;

/**
 * The menu of the keypad, opened by plus: two digits open a field by its number in the form, or
 * give a command; one sign gives the commands that are needed most.
 */
final class Menu {

  private static final char RELEASE = '/';

  /** More letters have no room where the menu stands in four columns. */
  private static final int LONGEST_WORDS = 18;

  private final Setup setup;
  private final Values values;
  private final Orders orders;
  private final Moving moving;

  Menu(Setup setup) {
    this.setup = setup;
    this.values = new Values(setup);
    this.orders = new Orders(setup);
    this.moving = new Moving(setup);
  }

  Step opened(State state) {
    boolean isSkipped = state.question().filter(Question.Skipped.class::isInstance).isPresent();
    if (isSkipped) {
      return Step.of(state.face(Face::withMenu));
    }
    return Step.of(
        state
            .face(Face::withMenu)
            .message("Two digits open a field; + saves, / lets the bird go."));
  }

  Step struck(State state, char c, Instant at) {
    State closed = state.face(Face::withoutMenu);
    if (c >= '1'
        && c <= '3'
        && state.face().keys().isEmpty()
        && closed.question().isPresent()
        && closed.question().get() instanceof Question.Skipped skipped) {
      return skipped(closed, skipped, c, at);
    }
    if (c == RELEASE) {
      return values.letGo(
          Pages.left(closed),
          new FieldValue.Code(Release.RELEASED.name()),
          new Provenance(Provenance.Way.KEYED, "+/"),
          at);
    }
    return c >= '0' && c <= '9'
        ? digit(state, closed, c, at)
        : command(closed, String.valueOf(c), at).orElseGet(() -> Step.of(closed));
  }

  private Optional<Step> command(State state, String keys, Instant at) {
    return Sayable.struck("+" + keys, state)
        .map(s -> orders.order(state, s.command(), Optional.empty(), at));
  }

  /** What became of skipped bands, by number. */
  private Step skipped(State state, Question.Skipped question, char c, Instant at) {
    switch (c) {
      case '1':
        return values.account(state, question, CaptureKind.LOST, at);
      case '2':
        return values.account(state, question, CaptureKind.DESTROYED, at);
      default:
        return orders.order(state, Command.OUT_OF_ORDER, Optional.empty(), at);
    }
  }

  /** What the menu has while bands are skipped. */
  static List<View.Choice> ofSkipped() {
    return List.of(
        new View.Choice("+1", "lost"),
        new View.Choice("+2", "destroyed"),
        new View.Choice("+3", "out of order"));
  }

  private Step digit(State state, State closed, char c, Instant at) {
    String digits = state.face().keys() + c;
    if (digits.length() < 2) {
      return Step.of(state.face(f -> f.withMenuDigits(digits)));
    }
    return command(closed, digits, at).orElseGet(() -> field(closed, digits));
  }

  private Step field(State state, String digits) {
    int number = Integer.parseInt(digits);
    List<FieldSpec> fields = setup.form().fields();
    return number >= 1 && number <= fields.size()
        ? moving.open(Pages.left(state), fields.get(number - 1).id())
        : Step.of(state.message("There is no " + digits + " in the menu."));
  }

  /** What can be chosen: every line a number or sign, what is said instead, and why it cannot. */
  List<View.Choice> choices(State state) {
    List<View.Choice> choices = new ArrayList<>();
    List<FieldSpec> fields = setup.form().fields();
    for (int i = 0; i < fields.size(); i++) {
      String number = String.format(Locale.ROOT, "%02d", i + 1);
      choices.add(new View.Choice(number, fields.get(i).label()));
    }
    choices.add(
        new View.Choice(
            String.valueOf(RELEASE),
            "let the bird go",
            state.record().isEmpty() ? "no bird begun" : ""));
    for (Sayable sayable : Sayable.ALL) {
      boolean isHere = sayable.keys().startsWith("+") && sayable.command() != Command.OUT_OF_ORDER;
      if (isHere && sayable.isShown(state)) {
        String words = setup.words(sayable.command()).orElse(sayable.meaning());
        // a phrase that would be cut teaches nobody what to say
        String brief = words.length() > LONGEST_WORDS ? sayable.meaning() : words;
        String keys = sayable.keys().substring(1);
        choices.add(new View.Choice(keys, brief, sayable.unavailable(state)));
      }
    }
    return choices;
  }

  /** What may be said now, with its keys; what cannot be said now stands in its place. */
  List<View.Choice> sayable(State state) {
    return Sayable.ALL.stream()
        .filter(s -> s.isShown(state))
        .map(
            s ->
                new View.Choice(
                    s.keys(), setup.words(s.command()).orElse(s.meaning()), s.unavailable(state)))
        .toList();
  }
}
