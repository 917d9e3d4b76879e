package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Finding;

/** The part of the dialogue that takes values back and empties fields. */
final class TakingBack {

  private final Setup setup;

  TakingBack(Setup setup) {
    this.setup = setup;
  }

  /** Takes back the last change of the record; again: one more, to the first. */
  Step takeBack(State state, Instant at) {
    if (state.changes().isEmpty() || state.record().isEmpty()) {
      return Step.of(state.message("There is nothing to take back.")).say("nothing to take back");
    }
    Change last = state.changes().get(state.changes().size() - 1);
    CaptureRecord record = state.record().get();
    FieldSpec spec = setup.form().spec(last.field());
    CaptureRecord before =
        last.before()
            .map(e -> record.with(last.field(), e))
            .orElseGet(() -> record.without(last.field()));
    Optional<Finding> wrong = refusal(state, before, at);
    if (wrong.isPresent()) {
      return refuse(state, wrong.get());
    }
    State undone =
        state
            .withRecord(before, state.changes().subList(0, state.changes().size() - 1))
            .withOpen(Optional.of(last.field()))
            .face(f -> f.withoutBig().withMessage(spec.label() + " taken back.").withKeys(""));
    Effect journalled =
        last.before()
            .<Effect>map(e -> new Effect.JournalValue(before, last.field(), e))
            .orElseGet(() -> new Effect.JournalErased(before, last.field(), at));
    return Step.of(undone).then(journalled).say(spec.spoken() + " taken back. " + spec.spoken());
  }

  /** Empties the named field, or else the one asked, or else the one given last. */
  Step erase(State state, Optional<FieldId> named, Instant at) {
    Optional<FieldId> field =
        named
            .or(() -> state.open().filter(f -> holds(state, f)))
            .or(state::lastGiven)
            .filter(f -> holds(state, f));
    if (field.isEmpty() || state.question().isPresent()) {
      return Step.of(state.message("There is nothing to erase.")).say("nothing to erase");
    }
    CaptureRecord record = state.record().orElseThrow();
    CaptureRecord without = record.without(field.get());
    Optional<Finding> wrong = refusal(state, without, at);
    if (wrong.isPresent()) {
      return refuse(state, wrong.get());
    }
    FieldSpec spec = setup.form().spec(field.get());
    State erased =
        state
            .withChange(without, new Change(field.get(), record.entry(field.get())))
            .withOpen(field)
            .face(f -> f.withoutBig().withMessage(spec.label() + " erased.").withKeys(""));
    return Step.of(erased)
        .then(new Effect.JournalErased(without, field.get(), at))
        .say(spec.spoken() + " erased. " + spec.spoken());
  }

  /** What a record would break without a value: without its kind a recapture is a new bird. */
  private Optional<Finding> refusal(State state, CaptureRecord record, Instant at) {
    return record.entries().keySet().stream()
        .flatMap(f -> setup.rules().check(record, f, state.known(), at).stream())
        .filter(f -> f.severity() == Finding.Severity.REFUSED)
        .findFirst();
  }

  private static Step refuse(State state, Finding finding) {
    return Step.of(state.message(finding.shown()))
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(finding.spoken());
  }

  private static boolean holds(State state, FieldId field) {
    return state.record().flatMap(r -> r.entry(field)).isPresent();
  }
}
