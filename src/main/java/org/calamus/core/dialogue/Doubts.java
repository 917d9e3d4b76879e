package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
        offer.field(),
        value,
        offer.provenance(),
        sorted,
        offer.overruled(),
        List.of(),
        rest,
        List.of());
  }

  /**
   * An offer that is answered for where the field holds the value already and the bander was asked
   * about it then: the same is not asked twice.
   */
  static Offer answeredBefore(State state, Offer offer, FieldValue value, List<Finding> findings) {
    List<String> kept =
        state
            .record()
            .flatMap(r -> r.entry(offer.field()))
            .filter(held -> held.value().equals(value))
            .map(Entry::confirmedRules)
            .orElse(List.of());
    List<String> overruled = new ArrayList<>(offer.overruled());
    findings.stream()
        .filter(f -> f.field() == offer.field())
        .map(Finding::rule)
        .filter(rule -> kept.contains(rule) && !overruled.contains(rule))
        .forEach(overruled::add);
    return new Offer(offer.field(), offer.heard(), offer.provenance(), overruled, offer.doubts());
  }

  /** What rules doubt of an offer and nobody answered; the bird's going waits for its own alone. */
  static List<Finding> doubted(Offer offer, List<Finding> findings) {
    boolean isRelease = offer.field() == FieldId.RELEASE;
    Stream<Finding> byTheWay = isRelease ? Stream.empty() : offer.doubts().stream();
    return Stream.concat(byTheWay, findings.stream())
        .filter(f -> f.severity() == Finding.Severity.ASKS)
        .filter(f -> f.field() == offer.field() || !isRelease)
        .filter(f -> f.field() != offer.field() || !offer.overruled().contains(f.rule()))
        .toList();
  }

  /** The question whether a doubted value is kept, where that is open. */
  static Optional<Question.Keep> open(State state) {
    return state
        .question()
        .flatMap(q -> q instanceof Question.Keep keep ? Optional.of(keep) : Optional.empty());
  }

  /** The question how the bird goes, where that is open. */
  static Optional<Question.Keep> aboutRelease(State state) {
    return open(state).filter(Question.Keep::isAboutRelease);
  }

  /** What an open question is about, as offers that raise it again. */
  static List<Offer> raising(Question question) {
    if (question instanceof Question.Keep keep) {
      return keep.isAboutRelease() ? keep.before() : keep.again();
    }
    if (question instanceof Question.Skipped skipped) {
      return BandQuestions.skippedTo(skipped, List.of());
    }
    return question instanceof Question.Twice twice ? twice.again() : BandQuestions.rest(question);
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
    return isPair(state, keep) ? "keep both" : "keep " + phrases.spokenWithName(spec, keep.value());
  }

  /** The question as the screen shows it behind the doubt. */
  String shown(State state, Question.Keep keep) {
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
   * The evidence that another field names and that the record lacks, where a doubt is about that:
   * the value just given has nothing to do with it.
   */
  Optional<FieldId> lacking(CaptureRecord record, FieldId given, Finding doubt) {
    return doubt.field() == given || doubt.severity() != Finding.Severity.ASKS
        ? Optional.empty()
        : setup.rules().evidenceLacking(record, doubt.field()).stream()
            .filter(evidence -> doubt.rule().equals(doubt.field().key() + "." + evidence.key()))
            .findFirst();
  }

  /** Whether the open question is about evidence that is lacking. */
  static boolean isLacking(State state) {
    return state.question().filter(Question.Lacking.class::isInstance).isPresent();
  }

  /** The state of a bander who goes on without answering a question about lacking evidence. */
  static State goneOn(State state) {
    return isLacking(state) ? state.withQuestion(Optional.empty()) : state;
  }

  /** Asks about lacking evidence behind a value that is taken, and stays shown as taken. */
  Step ask(State state, Question.Lacking lacking, List<String> told) {
    return Step.of(state.withQuestion(Optional.of(lacking)))
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, lacking.doubt().spoken() + ". go on without"));
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
        keep.rest(),
        keep.before());
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
