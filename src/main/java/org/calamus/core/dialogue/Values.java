package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Release;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.Meaning;

/** The part of the dialogue that brings values into the record, whatever the way in. */
final class Values {

  private final Setup setup;
  private final Phrases phrases;
  private final Saving saving;
  private final Prompts prompts;
  private final BandQuestions bands;
  private final Conclusions conclusions;
  private final NextBand nextBand;

  Values(Setup setup) {
    this.setup = setup;
    this.phrases = setup.phrases();
    this.saving = new Saving(setup.form());
    this.prompts = new Prompts(setup);
    this.bands = new BandQuestions(setup);
    this.conclusions = new Conclusions(setup);
    this.nextBand = new NextBand(setup);
  }

  /** Values that were spoken. */
  Step said(State state, Meaning.Values given, String words, Instant at) {
    Optional<FieldValue> release = release(given);
    if (release.isPresent()) {
      return letGo(state, release.get(), new Provenance(Provenance.Way.SAID, words), at);
    }
    if (isOtherQuestion(state)) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    Provenance provenance = new Provenance(Provenance.Way.SAID, words);
    Optional<FieldId> unnamed =
        given.isCorrection() && state.question().isEmpty()
            ? state.lastGiven()
            : Dialogue.askedField(state);
    List<Offer> offers = new ArrayList<>();
    for (Meaning.Item item : given.items()) {
      Optional<FieldId> field = item.field().or(() -> unnamed);
      field.ifPresent(f -> offers.add(new Offer(f, item.heard(), provenance)));
    }
    return inPlace(state, offers, at);
  }

  /** How the bird went, where nothing else was said; the bird comes before any question. */
  private static Optional<FieldValue> release(Meaning.Values given) {
    return given.items().size() == 1
            && given.items().get(0).field().filter(FieldId.RELEASE::equals).isPresent()
            && given.items().get(0).heard() instanceof Heard.One one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  /**
   * The bird goes now: an open question is dropped with the value it is about, and the record is
   * kept with what was taken.
   */
  Step letGo(State state, FieldValue how, Provenance provenance, Instant at) {
    Offer gone = new Offer(FieldId.RELEASE, new Heard.One(how), provenance);
    return state.record().isEmpty()
        ? nothingToLetGo(state)
        : offer(state.withQuestion(Optional.empty()), List.of(gone), at);
  }

  private static Step nothingToLetGo(State state) {
    return Step.of(state.message("There is no bird to release.")).say("no bird begun");
  }

  /**
   * Values given while a value may be in question. The question stays open until one of them is
   * taken or refused; what was said in one breath with the questioned value is offered after them,
   * and the questioned field is asked again where none of them fills it.
   */
  Step inPlace(State state, List<Offer> offers, Instant at) {
    Optional<Question> question = state.question();
    if (question.isEmpty()) {
      return offer(state, offers, at);
    }
    if (question.get() instanceof Question.Keep keep) {
      return offer(state.withOpen(Optional.of(keep.field())), with(offers, keep.rest()), at);
    }
    State asked = state.withQuestion(Optional.empty()).withOpen(Optional.of(FieldId.BAND));
    if (question.get() instanceof Question.Skipped skipped) {
      boolean hasBand = offers.stream().anyMatch(Values::isBand);
      return fate(offers)
          .map(fate -> account(state, skipped, fate, at))
          .orElseGet(
              () ->
                  hasBand
                      ? offer(asked, with(offers, skipped.rest()), at)
                      : prompts.miss(state, BandQuestions.answers(skipped)));
    }
    if (question.get() instanceof Question.Twice twice) {
      return readAgain(asked, twice, offers, at);
    }
    return offer(state, offers, at);
  }

  /** The bands that were skipped are lost or destroyed; then the band in question is taken. */
  Step account(State state, Question.Skipped skipped, CaptureKind fate, Instant at) {
    return BandQuestions.isTooMany(skipped)
        ? prompts.miss(state, "too many at once. read the band again")
        : bands
            .account(state, skipped, fate, at)
            .then(s -> offer(s, BandQuestions.skippedTo(skipped, List.of()), at));
  }

  private Step readAgain(State asked, Question.Twice twice, List<Offer> offers, Instant at) {
    Optional<Offer> second = offers.stream().filter(o -> o.field() == FieldId.BAND).findFirst();
    if (second.isEmpty() || second.get().heard() instanceof Heard.No) {
      return prompts.miss(asked.withQuestion(Optional.of(twice)), "read the band once more");
    }
    String text = second.get().heard() instanceof Heard.One one ? one.value().text() : "";
    return BandQuestions.readAgain(twice, second.get())
        .map(all -> offer(asked, all, at))
        .orElseGet(() -> bands.differ(asked, twice, text));
  }

  /** What was said of skipped bands; empty where something else was said. */
  private static Optional<CaptureKind> fate(List<Offer> offers) {
    return offers.stream()
        .filter(o -> o.field() == FieldId.KIND)
        .flatMap(
            o ->
                o.heard() instanceof Heard.One one ? Stream.of(one.value().text()) : Stream.empty())
        .flatMap(code -> CaptureKind.ofCode(code).stream())
        .filter(kind -> !kind.hasBird())
        .findFirst();
  }

  /** Whether remarks given now are about the bird saved last, since there is none in the hand. */
  static boolean isForLastSaved(State state) {
    return state.record().isEmpty() && state.lastSaved().isPresent();
  }

  /** Remarks that come when the bird is gone are added to its saved record. */
  private Step remark(Step step, Offer offer, List<Offer> rest, List<String> told, Instant at) {
    State state = step.state();
    Optional<FieldValue> value = decide(state, offer, at);
    if (value.isEmpty()) {
      return step.then(s -> prompts.miss(s, hint(offer), told));
    }
    State after =
        state
            .withOpen(Optional.of(setup.form().first()))
            .face(f -> f.withKeys("").withMisses(0).withoutBig());
    List<String> more = new ArrayList<>(told);
    more.add("remarks added");
    Entry note = new Entry(value.get(), offer.provenance(), at, List.of());
    return offer(new Step(after, step.effects()).then(s -> addRemarks(s, note)), rest, more, at);
  }

  /** Adds remarks to the record of the bird saved last, which gets a new version. */
  static Step addRemarks(State state, Entry note) {
    CaptureRecord remarked = state.lastSaved().orElseThrow().with(FieldId.NOTE, note);
    return Step.of(
            state.withAccounted(remarked).message("Remarks added to record " + remarked.id() + "."))
        .then(new Effect.AccountFor(remarked))
        .then(new Effect.Sound(Tone.TAKEN));
  }

  private static boolean isBand(Offer offer) {
    return offer.field() == FieldId.BAND && !(offer.heard() instanceof Heard.No);
  }

  /** What is given now, and what was given before for other fields. */
  private static List<Offer> with(List<Offer> offers, List<Offer> rest) {
    List<Offer> all = new ArrayList<>(offers);
    rest.stream()
        .filter(r -> offers.stream().noneMatch(o -> o.field() == r.field()))
        .forEach(all::add);
    return all;
  }

  /** Whether a question is open that only "affirm" or "negative" answers. */
  static boolean isOtherQuestion(State state) {
    return state
        .question()
        .filter(
            q ->
                !(q instanceof Question.Keep)
                    && !(q instanceof Question.Skipped)
                    && !(q instanceof Question.Twice))
        .isPresent();
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
      return step.then(Values::nothingToLetGo);
    }
    if (first.field() == FieldId.NOTE && isForLastSaved(state)) {
      return remark(step, first, rest, told, at);
    }
    Optional<FieldValue> value = decide(state, first, at).map(v -> orEarly(state, first, v));
    if (value.isEmpty()) {
      return step.then(s -> prompts.miss(s, hint(first), told));
    }
    List<Offer> concluded = conclusions.before(state, first, value.get());
    if (!concluded.isEmpty()) {
      return offer(step, with(concluded, offers), told, at);
    }
    Optional<Question> asks = bands.before(state, first, value.get(), rest);
    if (asks.isPresent()) {
      return step.then(s -> bands.ask(s, asks.get(), told));
    }
    List<Finding> findings = findings(state, first, value.get(), at);
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
    more.addAll(readback(state, first, value.get()));
    String note = findings.stream().map(Finding::shown).findFirst().orElse("");
    Step taken =
        step.then(s -> take(s, first.field(), entry))
            .then(s -> note.isEmpty() ? Step.of(s) : Step.of(s.message(note)))
            .then(s -> proposed(s, first.field()));
    conclusions.told(taken.state(), first.field()).ifPresent(more::add);
    return offer(taken, with(conclusions.after(taken.state(), first.field()), rest), more, at);
  }

  /** Once the species or the gauge says which band the bird takes, it is shown. */
  private Step proposed(State state, FieldId field) {
    boolean isOpen =
        state
            .record()
            .filter(r -> r.kind().putsBand() && r.entry(FieldId.BAND).isEmpty())
            .isPresent();
    boolean tells = field == FieldId.SPECIES || field == FieldId.LEG_GAUGE || field == FieldId.SEX;
    String sizes = String.join(", or ", nextBand.sizes(state));
    if (!isOpen || !tells || sizes.isEmpty() || !state.face().message().isEmpty()) {
      return Step.of(state);
    }
    String next = nextBand.of(state).map(b -> "; next " + b.text()).orElse("");
    return Step.of(state.message("Band size " + sizes + next + "."));
  }

  /** The value as read back: of the band that was expected its last three digits are enough. */
  private List<String> readback(State state, Offer offer, FieldValue value) {
    boolean isSilent =
        offer.field() == FieldId.BAND_SIZE && offer.provenance().way() == Provenance.Way.CONCLUDED;
    if (isSilent) {
      return List.of();
    }
    boolean isExpected = nextBand.of(state).map(value::equals).orElse(false);
    FieldSpec spec = setup.form().spec(offer.field());
    return List.of(
        value instanceof BandNumber band && isExpected
            ? spec.spoken() + " " + Spoken.digits(band.lastDigits())
            : phrases.spokenWithName(spec, value));
  }

  /** A bird that is released while something required is missing is released early. */
  private FieldValue orEarly(State state, Offer offer, FieldValue value) {
    boolean isRelease =
        offer.field() == FieldId.RELEASE && value.text().equals(Release.RELEASED.name());
    boolean isIncomplete =
        state
            .record()
            .map(r -> !setup.form().missing(r.without(FieldId.RELEASE)).isEmpty())
            .orElse(true);
    return isRelease && isIncomplete ? new FieldValue.Code(Release.EARLY.name()) : value;
  }

  private static String hint(Offer offer) {
    return offer.heard() instanceof Heard.No no ? no.hint() : "say it digit by digit";
  }

  /** The value meant; a value with a twin only where the rules accept it and not the twin. */
  private Optional<FieldValue> decide(State state, Offer offer, Instant at) {
    if (offer.heard() instanceof Heard.One one) {
      return Optional.of(one.value());
    }
    if (offer.heard() instanceof Heard.Ending ending) {
      return Optional.of(nextBand.ending(state, ending));
    }
    if (offer.heard() instanceof Heard.Twins twins) {
      boolean fits = isAccepted(state, offer, twins.value(), at);
      boolean twinFits = isAccepted(state, offer, twins.twin(), at);
      return fits && !twinFits ? Optional.of(twins.value()) : Optional.empty();
    }
    return Optional.empty();
  }

  private boolean isAccepted(State state, Offer offer, FieldValue value, Instant at) {
    return findings(state, offer, value, at).stream()
        .allMatch(f -> f.severity() == Finding.Severity.NOTES);
  }

  private List<Finding> findings(State state, Offer offer, FieldValue value, Instant at) {
    Entry entry = new Entry(value, offer.provenance(), at, offer.overruled());
    CaptureRecord candidate = current(state, at).with(offer.field(), entry);
    return setup.rules().check(candidate, offer.field(), state.known(), at);
  }

  /** The record in the hand, or one that would begin now. */
  CaptureRecord current(State state, Instant at) {
    return state
        .record()
        .orElseGet(
            () ->
                new CaptureRecord(
                    state.nextId(),
                    at,
                    setup.station().place(),
                    setup.station().bander(),
                    Map.of()));
  }

  /** Puts an accepted value into the record and its journal, and goes on to the next field. */
  private Step take(State state, FieldId field, Entry entry) {
    CaptureRecord before = current(state, entry.at());
    CaptureRecord after = before.with(field, entry);
    boolean wasAsked = state.open().map(field::equals).orElse(true);
    State taken =
        state
            .withChange(after, new Change(field, before.entry(field)))
            .withQuestion(Optional.empty())
            .face(f -> isAside(field, entry) ? f : shown(f, field, entry.value()))
            .face(f -> f.withKeys("").withMisses(0));
    boolean askedIsFilled = state.open().flatMap(after::entry).isPresent();
    State next =
        wasAsked || askedIsFilled || field == FieldId.KIND
            ? taken.withOpen(setup.form().nextEmpty(after, field))
            : taken;
    return Step.of(next)
        .then(new Effect.JournalValue(after, field, entry))
        .then(new Effect.Sound(Tone.TAKEN));
  }

  /** What the console adds by itself behind a value does not take that value's place. */
  private static boolean isAside(FieldId field, Entry entry) {
    return field == FieldId.BAND_SIZE && entry.provenance().way() == Provenance.Way.CONCLUDED;
  }

  private Face shown(Face face, FieldId field, FieldValue value) {
    return face.withBig(big(setup.form().spec(field), value), label(field, "= ", " taken"))
        .withMessage("");
  }

  /** A value in large glyphs has its unit beside it, in the label. */
  private static String big(FieldSpec spec, FieldValue value) {
    return Phrases.brief(spec, value).replaceFirst(" (mm|g)$", "");
  }

  private String label(FieldId field, String mark, String standing) {
    return mark + setup.form().spec(field).labelWithUnit() + standing;
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
                    f.withBig(big(spec, keep.value()), label(keep.field(), "? ", " in question"))
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
        take(state, keep.field(), entry),
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
    return take(state, keep.field(), entry)
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
}
