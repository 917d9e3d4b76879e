package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.rule.Finding;

/**
 * The questions about a doubted value. A doubt is about the value itself, about another with which
 * it does not go together, or about evidence that another names and the record lacks; what is asked
 * and what the answer changes differ.
 */
final class Doubts {

  private final Setup setup;
  private final Phrases phrases;

  Doubts(Setup setup) {
    this.setup = setup;
    this.phrases = setup.phrases();
  }

  /** The question about a value that rules doubt: what is about the value itself comes first. */
  static Question.Keep question(
      Offer offer, FieldValue value, List<Finding> doubts, List<Offer> rest) {
    List<Finding> sorted =
        doubts.stream()
            .sorted(Comparator.comparing((Finding f) -> f.field() != offer.field()))
            .toList();
    return new Question.Keep(
        offer.field(), value, offer.provenance(), sorted, offer.overruled(), List.of(), rest);
  }

  Step ask(State state, Question.Keep keep, List<String> told) {
    FieldSpec spec = setup.form().spec(keep.field());
    State asked =
        state
            .withQuestion(Optional.of(keep))
            .face(
                f ->
                    f.withBig(
                            Taking.big(spec, keep.value()),
                            "? " + spec.labelWithUnit() + " in question")
                        .withMessage("")
                        .withKeys(""));
    return Step.of(asked)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(
            Prompts.joined(told, keep.doubts().get(0).spoken() + ". " + spoken(state, keep, spec)));
  }

  private String spoken(State state, Question.Keep keep, FieldSpec spec) {
    if (lacking(state, keep).isPresent()) {
      return "go on without";
    }
    return isPair(state, keep) ? "keep both" : "keep " + phrases.spokenWithName(spec, keep.value());
  }

  /** The question as the screen shows it behind the doubt. */
  String shown(State state, Question.Keep keep) {
    if (lacking(state, keep).isPresent()) {
      return "Go on without?";
    }
    // in a sentence a comma parts a code from its words, not the gap of a table
    String value =
        phrases.shown(setup.form().spec(keep.field()), keep.value()).replaceFirst("  ", ", ");
    String other = setup.form().spec(keep.doubts().get(0).field()).label();
    return isPair(state, keep)
        ? "Keep both? Negative drops " + value + "; name " + other + " to give it anew."
        : "Keep " + value + "?";
  }

  /** Whether the doubt is about this value and one that stands in another field. */
  private static boolean isPair(State state, Question.Keep keep) {
    return !keep.isAboutValue() && holds(state, keep.doubts().get(0).field());
  }

  private static boolean holds(State state, FieldId field) {
    return state.record().flatMap(r -> r.entry(field)).isPresent();
  }

  /**
   * The evidence that another field names and that the record lacks, where the doubt is about that:
   * the value just given has nothing to do with it.
   */
  Optional<FieldId> lacking(State state, Question.Keep keep) {
    if (keep.isAboutValue() || state.record().isEmpty()) {
      return Optional.empty();
    }
    CaptureRecord record =
        state
            .record()
            .get()
            .with(
                keep.field(),
                new Entry(keep.value(), keep.provenance(), state.console().now(), List.of()));
    return setup.rules().evidenceLacking(record, keep.doubts().get(0).field()).stream().findFirst();
  }

  /** The question with its first doubt answered; the answer stands with the field it is about. */
  static Question.Keep answered(State state, Question.Keep keep) {
    Finding doubt = keep.doubts().get(0);
    List<String> confirmed = new ArrayList<>(keep.confirmed());
    List<Finding> elsewhere = new ArrayList<>(keep.elsewhere());
    if (keep.isAboutValue() || !holds(state, doubt.field())) {
      confirmed.add(doubt.rule());
    } else {
      elsewhere.add(doubt);
    }
    return new Question.Keep(
        keep.field(),
        keep.value(),
        keep.provenance(),
        keep.doubts().subList(1, keep.doubts().size()),
        confirmed,
        elsewhere,
        keep.rest());
  }

  /** Marks in another field's value that the bander kept it against a rule. */
  static Step confirm(State state, Finding doubt, FieldId from) {
    CaptureRecord record = state.record().orElseThrow();
    Entry held = record.entry(doubt.field()).orElseThrow();
    List<String> confirmed = new ArrayList<>(held.confirmedRules());
    confirmed.add(doubt.rule());
    Entry marked = new Entry(held.value(), held.provenance(), held.at(), confirmed);
    CaptureRecord after = record.with(doubt.field(), marked);
    Change change = new Change.Concluded(doubt.field(), Optional.of(held), from);
    return Step.of(state.withChange(after, change))
        .then(new Effect.JournalValue(after, doubt.field(), marked));
  }
}
