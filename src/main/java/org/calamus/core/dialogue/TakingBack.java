package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Finding;

/**
 * The part of the dialogue that takes values back and empties fields. What the console had
 * concluded from a value goes with it; a field that was left as it was is asked again.
 */
final class TakingBack {

  private final Setup setup;
  private final Prompts prompts;

  TakingBack(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
  }

  /** Takes back the last thing that happened to the record; again: one more, to the first. */
  Step takeBack(State state, Instant at) {
    List<Change> changes = state.changes();
    if (changes.isEmpty()) {
      return nothing(state);
    }
    int from = lastGroup(changes);
    Change main = main(changes.subList(from, changes.size()));
    if (main instanceof Change.Passed) {
      return prompts.prompt(asking(undo(state, from, at).state(), main.field(), ""), "back");
    }
    Step undone = possible(undo(state, from, at), main.field(), at);
    Optional<Finding> wrong = refusal(undone.state(), at);
    if (wrong.isPresent()) {
      return refuse(state, wrong.get());
    }
    FieldSpec spec = setup.form().spec(main.field());
    return undone
        .then(s -> Step.of(asking(s, main.field(), spec.label() + " taken back.")))
        .then(s -> Step.of(s.face(f -> f.withEchoed(Optional.of(main.field())))))
        .then(s -> prompts.prompt(s, spec.spoken() + " taken back"));
  }

  /**
   * What a field held before may have become impossible, as a band that was called lost meanwhile:
   * then the field is emptied.
   */
  private Step possible(Step undone, FieldId field, Instant at) {
    boolean isPossible = !holds(undone.state(), field) || refusal(undone.state(), at).isEmpty();
    if (isPossible) {
      return undone;
    }
    CaptureRecord without = undone.state().record().orElseThrow().without(field);
    return undone
        .then(s -> Step.of(s.withRecord(without, s.changes())))
        .then(new Effect.JournalErased(without, field, at));
  }

  private static State asking(State state, FieldId field, String message) {
    return state
        .withOpen(Optional.of(field))
        .face(f -> f.withoutBig().withMessage(message).withKeys(""));
  }

  private static Step nothing(State state) {
    boolean isSaved = state.record().isEmpty() && state.lastSaved().isPresent();
    String shown =
        isSaved
            ? "There is nothing to take back: record "
                + state.lastSaved().get().id()
                + " is saved and stays as it is."
            : "There is nothing to take back.";
    return Step.of(state.message(shown))
        .say(isSaved ? "the last bird is saved. nothing to take back" : "nothing to take back");
  }

  /** Where the changes begin that are taken back together: one, and what was concluded from it. */
  private static int lastGroup(List<Change> changes) {
    int at = changes.size() - 1;
    while (at > 0 && changes.get(at) instanceof Change.Concluded concluded) {
      boolean isBehind = changes.get(at - 1).field() == concluded.from();
      if (!isBehind && !(changes.get(at - 1) instanceof Change.Concluded)) {
        return at;
      }
      at--;
    }
    FieldId field = changes.get(at).field();
    while (at > 0
        && changes.get(at) instanceof Change.Given
        && changes.get(at - 1) instanceof Change.Concluded before
        && before.from() == field) {
      at--;
    }
    return at;
  }

  /** The change by which the others of its group came about. */
  private static Change main(List<Change> group) {
    return group.stream()
        .filter(c -> !(c instanceof Change.Concluded))
        .findFirst()
        .orElse(group.get(0));
  }

  /** Undoes the changes from one on, the last first, with the journal. */
  private static Step undo(State state, int from, Instant at) {
    Step step = Step.of(state);
    for (int i = state.changes().size() - 1; i >= from; i--) {
      step = step.then(s -> undoLast(s, at));
    }
    return step;
  }

  private static Step undoLast(State state, Instant at) {
    int last = state.changes().size() - 1;
    Change change = state.changes().get(last);
    List<Change> left = state.changes().subList(0, last);
    if (change instanceof Change.Passed) {
      return Step.of(state.withChanges(left));
    }
    Optional<Entry> held =
        change instanceof Change.Given given
            ? given.before()
            : ((Change.Concluded) change).before();
    CaptureRecord record = state.record().orElseThrow();
    FieldId field = change.field();
    if (held.isPresent()) {
      CaptureRecord before = record.with(field, held.get());
      return Step.of(state.withRecord(before, left))
          .then(new Effect.JournalValue(before, field, held.get()));
    }
    CaptureRecord before = record.without(field);
    return Step.of(state.withRecord(before, left))
        .then(new Effect.JournalErased(before, field, at));
  }

  /** What was concluded from a value that was not taken in the end is not kept either. */
  static Step withoutConclusions(State state, FieldId from, Instant at) {
    Step step = Step.of(state);
    while (isConcludedLast(step.state(), from)) {
      step = step.then(s -> undoLast(s, at));
    }
    return step;
  }

  /** The changes that made a record that an earlier session left, as far as it tells. */
  static List<Change> changes(CaptureRecord record) {
    return record.entries().entrySet().stream()
        .sorted(Comparator.comparing(e -> e.getValue().at()))
        .map(e -> Taking.change(e.getKey(), Optional.empty(), e.getValue()))
        .toList();
  }

  private static boolean isConcludedLast(State state, FieldId from) {
    List<Change> changes = state.changes();
    return !changes.isEmpty()
        && changes.get(changes.size() - 1) instanceof Change.Concluded concluded
        && concluded.from() == from
        && state.record().flatMap(r -> r.entry(from)).isEmpty();
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
    Optional<Finding> wrong = refusal(state.withRecord(without, state.changes()), at);
    if (wrong.isPresent()) {
      return refuse(state, wrong.get());
    }
    FieldSpec spec = setup.form().spec(field.get());
    State erased =
        asking(
                state.withChange(without, new Change.Given(field.get(), record.entry(field.get()))),
                field.get(),
                spec.label() + " erased.")
            .face(f -> f.withEchoed(field));
    return Step.of(erased)
        .then(new Effect.JournalErased(without, field.get(), at))
        .say(spec.spoken() + " erased. " + spec.spoken());
  }

  /** What a record would break without a value: without its kind a recapture is a new bird. */
  private Optional<Finding> refusal(State state, Instant at) {
    return setup.rules().review(state.record().orElseThrow(), state.known(), at).stream()
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
