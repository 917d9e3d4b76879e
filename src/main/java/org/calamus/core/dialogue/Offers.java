package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.rule.Finding;

/** The part of the dialogue that takes, questions or refuses values, one after the other. */
final class Offers {

  private final Setup setup;
  private final Phrases phrases;
  private final Saving saving;
  private final Prompts prompts;
  private final BandQuestions bands;
  private final Conclusions conclusions;
  private final Deciding deciding;
  private final Taking taking;

  Offers(Setup setup) {
    this.setup = setup;
    this.phrases = setup.phrases();
    this.saving = new Saving(setup);
    this.prompts = new Prompts(setup);
    this.bands = new BandQuestions(setup);
    this.conclusions = new Conclusions(setup);
    this.deciding = new Deciding(setup);
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
    return state
        .console()
        .waiting()
        .filter(w -> state.record().map(r -> r.entry(w.field()).isEmpty()).orElse(false))
        .isPresent();
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
      return step.then(s -> prompts.miss(s, Deciding.hint(first), told));
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
      return step.then(s -> refuse(s, first.field(), findings.get(0), told));
    }
    List<Finding> doubts =
        first.field() == FieldId.RELEASE
            ? List.of()
            : findings.stream().filter(f -> f.severity() == Finding.Severity.ASKS).toList();
    if (!doubts.isEmpty()) {
      Question.Keep keep =
          new Question.Keep(
              first.field(), value.get(), first.provenance(), doubts, first.overruled(), rest);
      return step.then(s -> ask(s, keep, told));
    }
    Entry entry = new Entry(value.get(), first.provenance(), at, first.overruled());
    List<String> more = new ArrayList<>(told);
    more.addAll(taking.readback(state, first, value.get()));
    String note = findings.stream().map(Finding::shown).findFirst().orElse("");
    Step taken =
        step.then(s -> taking.take(s, first.field(), entry))
            .then(s -> note.isEmpty() ? Step.of(s) : Step.of(s.message(note)))
            .then(s -> taking.proposed(s, first.field()));
    conclusions.told(taken.state(), first.field()).ifPresent(more::add);
    return offer(taken, with(conclusions.after(taken.state(), first.field()), rest), more, at);
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
            .face(f -> f.withKeys("").withMisses(0).withoutBig());
    List<String> more = new ArrayList<>(told);
    more.add("remarks added");
    Entry note = new Entry(value.get(), offer.provenance(), at, List.of());
    return offer(new Step(after, step.effects()).then(s -> Remarks.add(s, note)), rest, more, at);
  }

  static Step nothingToLetGo(State state) {
    return Step.of(state.message("There is no bird to release.")).say("no bird begun");
  }

  private Step refuse(State state, FieldId field, Finding finding, List<String> told) {
    State refused =
        state
            .withOpen(Optional.of(field))
            .withQuestion(Optional.empty())
            .face(f -> f.withMessage(finding.shown()).withKeys("").withoutBig());
    return Step.of(refused)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, finding.spoken()));
  }

  private Step ask(State state, Question.Keep keep, List<String> told) {
    Finding doubt = keep.doubts().get(0);
    FieldSpec spec = setup.form().spec(keep.field());
    State asked =
        state
            .withQuestion(Optional.of(keep))
            .face(
                f ->
                    f.withBig(
                            Taking.big(spec, keep.value()),
                            taking.label(keep.field(), "? ", " in question"))
                        .withMessage("")
                        .withKeys(""));
    String keeps =
        keep.isAboutValue() ? "keep " + phrases.spokenWithName(spec, keep.value()) : "go on";
    return Step.of(asked)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, doubt.spoken() + ". " + keeps));
  }

  /** The bander keeps the doubted value. */
  Step keep(State state, Question.Keep keep, Instant at) {
    List<String> confirmed = new ArrayList<>(keep.confirmed());
    confirmed.add(keep.doubts().get(0).rule());
    List<Finding> left = keep.doubts().subList(1, keep.doubts().size());
    if (!left.isEmpty()) {
      Question.Keep next =
          new Question.Keep(
              keep.field(), keep.value(), keep.provenance(), left, confirmed, keep.rest());
      return ask(state, next, List.of());
    }
    Entry entry = new Entry(keep.value(), keep.provenance(), at, confirmed);
    FieldSpec spec = setup.form().spec(keep.field());
    return offer(
        taking.take(state, keep.field(), entry),
        keep.rest(),
        List.of(phrases.spokenWithName(spec, keep.value())),
        at);
  }

  /** The bander drops the doubted value: the field is asked again, after what else was said. */
  Step drop(State state, Question.Keep keep, Instant at) {
    if (!keep.isAboutValue()) {
      return takeAndOpen(state, keep, at);
    }
    State dropped =
        state
            .withQuestion(Optional.empty())
            .withOpen(Optional.of(keep.field()))
            .face(f -> f.withoutBig().withMessage("").withKeys(""));
    return offer(dropped, keep.rest(), at);
  }

  /** The value was right and shows another to be wrong: that one is asked again. */
  private Step takeAndOpen(State state, Question.Keep keep, Instant at) {
    Entry entry = new Entry(keep.value(), keep.provenance(), at, keep.confirmed());
    FieldId wrong = keep.doubts().get(0).field();
    return taking
        .take(state, keep.field(), entry)
        .then(s -> offer(s.withOpen(Optional.of(wrong)), keep.rest(), at));
  }

  /** Offers the mass that settled while a question was open; then says what is asked. */
  private Step waiting(Step step, List<String> told, Instant at) {
    Optional<Offer> waiting = step.state().console().waiting();
    State state = step.state().console(c -> c.withWaiting(Optional.empty()));
    boolean isWanted = hasWaiting(step.state());
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
