package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.rule.Finding;

/** The part of the dialogue that takes, questions or refuses values, one after the other. */
final class Offers {

  private final Setup setup;
  private final Saving saving;
  private final Prompts prompts;
  private final BandQuestions bands;
  private final Conclusions conclusions;
  private final Deciding deciding;
  private final Doubts doubts;
  private final Twins twins;
  private final Taking taking;

  Offers(Setup setup) {
    this.setup = setup;
    this.saving = new Saving(setup);
    this.prompts = new Prompts(setup);
    this.bands = new BandQuestions(setup);
    this.conclusions = new Conclusions(setup);
    this.deciding = new Deciding(setup);
    this.doubts = new Doubts(setup);
    this.twins = new Twins(setup);
    this.taking = new Taking(setup);
  }

  /** Takes, questions or refuses values in their order. */
  Step offer(State state, List<Offer> offers, Instant at) {
    return offer(Step.of(state), offers, List.of(), at);
  }

  /** Says something, offers the mass that settled while a question was open, and asks on. */
  Step goOn(State state, String told, Instant at) {
    return offer(Step.of(state), List.of(), List.of(told), at);
  }

  /** Whether a mass settled while it could not be offered, and is still wanted. */
  static boolean hasWaiting(State state) {
    return !state.isCorrecting()
        && state
            .console()
            .waiting()
            .filter(
                w ->
                    state
                        .record()
                        .filter(r -> r.kind().hasBird() && r.entry(w.field()).isEmpty())
                        .isPresent())
            .isPresent();
  }

  /** Takes, questions or refuses values, after something is told. */
  Step offer(State state, List<Offer> offers, List<String> told, Instant at) {
    return offer(Step.of(state), offers, told, at);
  }

  private Step offer(Step step, List<Offer> offers, List<String> told, Instant at) {
    State state = step.state();
    if (offers.isEmpty()) {
      return waiting(step, told, at);
    }
    Offer first = offers.get(0);
    List<Offer> rest = offers.subList(1, offers.size());
    if (first.field() == FieldId.RELEASE && state.record().isEmpty()) {
      return step.then(Offers::nothingToLetGo);
    }
    if (first.field() == FieldId.NOTE && Remarks.isForLastSaved(state)) {
      return remark(step, first, rest, told, at);
    }
    Optional<FieldValue> value =
        deciding.decide(state, first, at).map(v -> deciding.orEarly(state, first, v));
    if (value.isEmpty()) {
      return deciding
          .which(state, first, rest, at)
          .map(which -> step.then(s -> twins.ask(s, which, told)))
          .orElseGet(() -> step.then(s -> prompts.miss(s, Deciding.hint(first), told)));
    }
    List<Offer> concluded = conclusions.before(state, first, value.get());
    if (!concluded.isEmpty()) {
      return offer(step, with(concluded, offers), told, at);
    }
    Optional<Question> asks = bands.before(state, first, value.get(), rest);
    if (asks.isPresent()) {
      return step.then(s -> bands.ask(s, asks.get(), told));
    }
    List<Finding> findings = deciding.findings(state, first, value.get(), at);
    if (findings.stream().anyMatch(f -> f.severity() == Finding.Severity.REFUSED)) {
      return step.then(s -> refuse(s, first.field(), findings.get(0), told, at));
    }
    CaptureRecord with = deciding.with(state, first, value.get(), at);
    Offer answered = Doubts.answeredBefore(state, first, value.get(), findings);
    List<Finding> doubted =
        Doubts.doubted(answered, findings).stream()
            .filter(f -> doubts.lacking(with, first.field(), f).isEmpty())
            .toList();
    if (!doubted.isEmpty()) {
      Question.Keep keep = Doubts.question(answered, value.get(), doubted, rest);
      return step.then(s -> doubts.ask(s, keep, told));
    }
    List<String> overruled = BandQuestions.overruled(answered.overruled());
    Entry entry = new Entry(value.get(), first.provenance(), at, overruled);
    List<String> more = new ArrayList<>(told);
    more.addAll(taking.readback(state, first, value.get()));
    String note =
        findings.stream()
            .filter(f -> f.severity() == Finding.Severity.NOTES)
            .map(Finding::shown)
            .findFirst()
            .orElse("");
    Step taken =
        step.then(s -> taking.take(s, first.field(), entry))
            .then(s -> note.isEmpty() ? Step.of(s) : Step.of(s.message(note)))
            .then(s -> taking.proposed(s, first.field()));
    conclusions.told(taken.state(), first.field()).ifPresent(more::add);
    List<Offer> left = with(conclusions.after(taken.state(), first.field()), rest);
    Optional<Question.Lacking> lacking =
        left.isEmpty() ? lacking(taken.state(), first.field(), findings) : Optional.empty();
    return lacking.isPresent()
        ? taken.then(s -> doubts.ask(s, lacking.get(), more))
        : offer(taken, left, more, at);
  }

  /**
   * The evidence to ask about behind a value that was taken: not where another value follows, which
   * asks again, nor where the bird is gone.
   */
  private Optional<Question.Lacking> lacking(State state, FieldId given, List<Finding> findings) {
    if (hasWaiting(state) || Saving.isBirdGone(state)) {
      return Optional.empty();
    }
    CaptureRecord record = state.record().orElseThrow();
    return findings.stream()
        .flatMap(
            f ->
                doubts.lacking(record, given, f).stream()
                    .map(evidence -> new Question.Lacking(given, evidence, f)))
        .findFirst();
  }

  /** The bander goes on without the evidence: that stands with the field which names it. */
  Step without(State state, Question.Lacking lacking, Instant at) {
    return Doubts.confirm(state.withQuestion(Optional.empty()), lacking.doubt(), lacking.given())
        .then(s -> offer(s, List.of(), at));
  }

  /** Remarks that come when the bird is gone are added to its saved record. */
  private Step remark(Step step, Offer offer, List<Offer> rest, List<String> told, Instant at) {
    State state = step.state();
    Optional<FieldValue> value = deciding.decide(state, offer, at);
    if (value.isEmpty()) {
      return step.then(s -> prompts.miss(s, Deciding.hint(offer), told));
    }
    State after =
        state
            .withOpen(Optional.of(setup.form().first()))
            .face(f -> f.withKeys("").withMissed(Misses.none()).withoutBig());
    List<String> more = new ArrayList<>(told);
    more.add("remarks added");
    Entry note = new Entry(value.get(), offer.provenance(), at, List.of());
    return offer(new Step(after, step.effects()).then(s -> Remarks.add(s, note)), rest, more, at);
  }

  static Step nothingToLetGo(State state) {
    return Step.of(state.message("There is no bird to release.")).say("no bird begun");
  }

  /** A value is refused: it is not stored, and what the field held before stays, which is said. */
  private Step refuse(State state, FieldId field, Finding finding, List<String> told, Instant at) {
    State refused =
        state
            .withOpen(Optional.of(field))
            .withQuestion(Optional.empty())
            .face(f -> f.withMessage(finding.shown()).withKeys("").withoutBig());
    String stays =
        taking.held(state, setup.form().spec(field)).isEmpty() ? "" : staying(state, field);
    return TakingBack.withoutConclusions(refused, field, at)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, finding.spoken() + stays));
  }

  private String staying(State state, FieldId field) {
    FieldSpec spec = setup.form().spec(field);
    return ". " + spec.spoken() + taking.held(state, spec).replace(", now", " stays");
  }

  /** The bander keeps the doubted value. */
  Step keep(State state, Question.Keep keep, Instant at) {
    Question.Keep left = Doubts.answered(state, keep);
    return left.doubts().isEmpty() ? keepAll(state, left, at) : doubts.ask(state, left, List.of());
  }

  private Step keepAll(State state, Question.Keep keep, Instant at) {
    Step taken = taking.take(state, keep.field(), entry(keep, at));
    for (Finding doubt : keep.elsewhere()) {
      taken = taken.then(s -> Doubts.confirm(s, doubt, keep.field()));
    }
    List<String> told = taking.readback(state, keep.offered(), keep.value());
    return offer(taken, keep.rest(), told, at);
  }

  private static Entry entry(Question.Keep keep, Instant at) {
    List<String> overruled = BandQuestions.overruled(keep.confirmed());
    return new Entry(keep.value(), keep.provenance(), at, overruled);
  }

  /**
   * The bander drops the doubted value: the field is asked again, after what else was said. How the
   * bird goes was not asked: what was asked before is asked again.
   */
  Step drop(State state, Question.Keep keep, Instant at) {
    State dropped =
        state
            .withQuestion(Optional.empty())
            .withOpen(keep.isAboutRelease() ? state.open() : Optional.of(keep.field()))
            .face(f -> f.withoutBig().withMessage("").withKeys(""));
    return TakingBack.withoutConclusions(dropped, keep.field(), at)
        .then(s -> offer(s, keep.without(), at));
  }

  /** Offers the mass that settled while a question was open; then says what is asked. */
  private Step waiting(Step step, List<String> told, Instant at) {
    Optional<Offer> waiting = step.state().console().waiting();
    boolean isWanted = hasWaiting(step.state());
    boolean isForNext =
        step.state().isCorrecting()
            || step.state().record().filter(r -> r.kind().hasBird()).isEmpty();
    State state = step.state().console(c -> isForNext ? c : c.withWaiting(Optional.empty()));
    Step cleared = new Step(state, step.effects());
    if (isWanted) {
      return offer(cleared, List.of(waiting.get()), told, at);
    }
    return Saving.isBirdGone(state)
        ? cleared.then(s -> saving.save(s, told, at))
        : cleared.then(s -> prompts.prompt(s, String.join(". ", told)));
  }

  /** What is given now, and what was given before for other fields. */
  static List<Offer> with(List<Offer> offers, List<Offer> rest) {
    List<Offer> all = new ArrayList<>(offers);
    rest.stream()
        .filter(r -> offers.stream().noneMatch(o -> o.field() == r.field()))
        .forEach(all::add);
    return all;
  }
}
