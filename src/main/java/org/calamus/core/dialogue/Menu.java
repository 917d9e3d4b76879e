package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
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

  /** Changes between open listening and the talk key. */
  static final String TALK = "96";

  /** Pauses, or goes on. */
  static final String PAUSE = "95";

  private static final String ABANDON = "98";
  private static final String END = "99";

  private final Form form;
  private final Values values;
  private final Orders orders;

  Menu(Form form, Values values, Orders orders) {
    this.form = form;
    this.values = values;
    this.orders = orders;
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
        && closed.question().isPresent()
        && closed.question().get() instanceof Question.Skipped skipped) {
      return skipped(closed, skipped, c, at);
    }
    switch (c) {
      case '+':
        return orders.save(closed);
      case '*':
        return orders.readBack(closed);
      case '/':
        return values.letGo(
            closed,
            new FieldValue.Code(Release.RELEASED.name()),
            new Provenance(Provenance.Way.KEYED, "+/"),
            at);
      case '-':
        return orders.erase(closed, at);
      default:
        return c >= '0' && c <= '9' ? digit(state, closed, c, at) : Step.of(closed);
    }
  }

  /** What became of skipped bands, by number. */
  private Step skipped(State state, Question.Skipped question, char c, Instant at) {
    switch (c) {
      case '1':
        return values.account(state, question, CaptureKind.LOST, at);
      case '2':
        return values.account(state, question, CaptureKind.DESTROYED, at);
      default:
        return orders.outOfOrder(state, at);
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
    if (digits.equals(PAUSE) || digits.equals(TALK)) {
      Command command = digits.equals(PAUSE) ? pause(closed) : talk(closed);
      return orders.order(closed, command, Optional.empty(), at);
    }
    if (digits.equals(ABANDON)) {
      return orders.askToAbandon(closed);
    }
    if (digits.equals(END)) {
      return orders.end(closed);
    }
    int number = Integer.parseInt(digits);
    List<FieldSpec> fields = form.fields();
    return number >= 1 && number <= fields.size()
        ? orders.open(closed, fields.get(number - 1).id())
        : Step.of(closed.message("There is no " + digits + " in the menu."));
  }

  private static Command pause(State state) {
    return Heeding.isPaused(state) ? Command.RESUME : Command.STAND_BY;
  }

  private static Command talk(State state) {
    boolean isOpen = state.console().attention().talk() == Talk.OPEN;
    return isOpen ? Command.TALK_KEY : Command.TALK_OPEN;
  }

  /** What can be chosen: every line a number or sign, and what it does. */
  static List<View.Choice> choices(Form form) {
    List<View.Choice> choices = new ArrayList<>();
    List<FieldSpec> fields = form.fields();
    for (int i = 0; i < fields.size(); i++) {
      String number = String.format(Locale.ROOT, "%02d", i + 1);
      choices.add(new View.Choice(number, fields.get(i).label()));
    }
    choices.add(new View.Choice("+", "save record"));
    choices.add(new View.Choice("/", "release bird as it is"));
    choices.add(new View.Choice("*", "read back"));
    choices.add(new View.Choice("-", "erase"));
    choices.add(new View.Choice(PAUSE, "pause, or go on"));
    choices.add(new View.Choice(TALK, "talk key, or listen openly"));
    choices.add(new View.Choice(ABANDON, "abandon record"));
    choices.add(new View.Choice(END, "end session"));
    return choices;
  }
}
