package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;

/** What can be chosen by number now. */
final class Choices {

  /** Longer tables, as that of the species, cannot be shown as a list. */
  private static final int LONGEST_TABLE = 40;

  private final Setup setup;

  Choices(Setup setup) {
    this.setup = setup;
  }

  List<View.Choice> of(State state) {
    boolean isSkipped = state.question().filter(Question.Skipped.class::isInstance).isPresent();
    if (isSkipped) {
      return Menu.ofSkipped();
    }
    if (state.question().filter(Question.Reason.class::isInstance).isPresent()
        && !state.face().isMenu()) {
      return Amending.choices();
    }
    if (state.face().isMenu()) {
      return new Menu(setup).choices(state);
    }
    if (state.face().panel() == Face.Panel.HELP) {
      return new Menu(setup).sayable(state);
    }
    Optional<FieldSpec> asked = Dialogue.askedField(state).map(setup.form()::spec);
    return asked.map(this::codes).orElse(List.of());
  }

  /** The codes of a field that can be chosen by number; none where there are too many to list. */
  List<View.Choice> codes(FieldSpec spec) {
    return codes(spec.kind());
  }

  private static List<View.Choice> codes(FieldKind kind) {
    if (kind instanceof FieldKind.Coded coded) {
      return codes(coded.table());
    }
    return kind instanceof FieldKind.CodedMany many ? codes(many.table()) : List.of();
  }

  private static List<View.Choice> codes(CodeTable table) {
    boolean isWorthShowing =
        table.rows().size() <= LONGEST_TABLE
            && table.rows().stream().anyMatch(r -> !r.words().equals(r.digits()));
    return isWorthShowing
        ? table.rows().stream()
            .filter(r -> !r.digits().isEmpty())
            .map(r -> new View.Choice(r.digits(), r.words()))
            .toList()
        : List.of();
  }
}
