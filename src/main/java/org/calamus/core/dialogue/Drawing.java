package org.calamus.core.dialogue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.calamus.core.readback.Placing;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;

/**
 * Makes the pictures of a state. A measure is placed once it is given and not before: who sees the
 * usual range while reading the rule reads what is expected.
 */
final class Drawing {

  private final Setup setup;
  private final Placing placing;

  Drawing(Setup setup) {
    this.setup = setup;
    this.placing =
        new Placing(
            setup.form(), setup.rules().reference().species(), setup.rules().policy().zone());
  }

  Pictures of(State state) {
    return state.record().map(record -> of(state, record)).orElseGet(Pictures::none);
  }

  private Pictures of(State state, CaptureRecord record) {
    List<Strip> strips =
        Placing.FIELDS.stream()
            .filter(setup.form()::has)
            .flatMap(
                field ->
                    amount(state, record, field)
                        .flatMap(a -> placing.strip(record, field, a, state.known()))
                        .stream())
            .toList();
    Optional<FieldId> inWork = inWork(state);
    boolean hasMass = setup.form().has(FieldId.MASS);
    boolean isWeighing =
        Optional.of(FieldId.MASS).equals(inWork)
            || Optional.of(FieldId.MASS).equals(Dialogue.askedField(state));
    return new Pictures(
        strips,
        inWork,
        hasMass
            ? placing.course(record, amount(state, record, FieldId.MASS), state.known())
            : Optional.empty(),
        isWeighing);
  }

  /** The amount in question, or else the one that was taken. */
  private static Optional<BigDecimal> amount(State state, CaptureRecord record, FieldId field) {
    return Doubts.open(state)
        .filter(keep -> keep.field() == field)
        .flatMap(
            keep ->
                keep.value() instanceof FieldValue.Measure measure
                    ? Optional.of(measure.amount())
                    : Optional.empty())
        .or(() -> record.amount(field));
  }

  private static Optional<FieldId> inWork(State state) {
    return Doubts.open(state)
        .map(Question.Keep::field)
        .or(() -> last(state.changes()).filter(Change.Given.class::isInstance).map(Change::field));
  }

  private static Optional<Change> last(List<Change> changes) {
    return changes.isEmpty() ? Optional.empty() : Optional.of(changes.get(changes.size() - 1));
  }
}
