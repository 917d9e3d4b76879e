package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;

/**
 * The menu of the keypad, opened by plus: two digits open a field by its number in the form, or
 * give a command; one sign gives the commands that are needed most.
 */
final class Menu {

  private static final String ABANDON = "98";
  private static final String END = "99";

  private final Form form;
  private final Orders orders;

  Menu(Form form, Orders orders) {
    this.form = form;
    this.orders = orders;
  }

  Step opened(State state) {
    return Step.of(
        state
            .face(Face::withMenu)
            .message("Two digits open a field; + saves, / lets the bird go."));
  }

  Step struck(State state, char c, Instant at) {
    State closed = state.face(Face::withoutMenu);
    switch (c) {
      case '+':
        return orders.save(closed);
      case '*':
        return orders.readBack(closed);
      case '/':
        return orders.letGo(closed, at);
      case '-':
        return orders.erase(closed, Optional.empty(), at);
      default:
        return c >= '0' && c <= '9' ? digit(state, closed, c) : Step.of(closed);
    }
  }

  private Step digit(State state, State closed, char c) {
    String digits = state.face().keys() + c;
    if (digits.length() < 2) {
      return Step.of(state.face(f -> f.withMenuDigits(digits)));
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
    choices.add(new View.Choice(ABANDON, "abandon record"));
    choices.add(new View.Choice(END, "end session"));
    return choices;
  }
}
