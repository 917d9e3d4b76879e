package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Release;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding;
import org.calamus.core.speech.Command;

/** The part of the dialogue that carries out commands and answers. */
final class Orders {

  private final Setup setup;
  private final Values values;
  private final Prompts prompts;
  private final Heeding heeding;

  Orders(Setup setup, Values values) {
    this.setup = setup;
    this.values = values;
    this.prompts = new Prompts(setup);
    this.heeding = new Heeding(setup);
  }

  /** Carries out a command, wherever it came from. */
  Step order(State state, Command command, Optional<FieldId> field, Instant at) {
    switch (command) {
      case AFFIRM:
        return affirm(state, at);
      case NEGATIVE:
      case CORRECT:
        return field.isPresent() ? open(state, field.get()) : takeBack(state, at);
      case REPEAT:
        return repeat(state);
      case READBACK:
        return readBack(state);
      case ERASE:
        return erase(state, field, at);
      case NEXT:
        return next(state);
      case SAVE:
        return save(state);
      case ABANDON:
        return askToAbandon(state);
      case OUT_OF_ORDER:
        return outOfOrder(state, at);
      case END:
        return end(state);
      case STAND_BY:
      case RESUME:
      case TALK_KEY:
      case TALK_OPEN:
        return heeding.order(state, command, at);
      default:
        throw new AssertionError(command);
    }
  }

  private Step affirm(State state, Instant at) {
    if (state.question().isEmpty()) {
      return state.open().isEmpty() ? save(state) : repeat(state);
    }
    Question question = state.question().get();
    if (question instanceof Question.Keep keep) {
      return values.keep(state.withQuestion(Optional.empty()), keep, at);
    }
    if (question instanceof Question.Skipped || question instanceof Question.Twice) {
      return prompts.miss(state, BandQuestions.answers(question));
    }
    if (question instanceof Question.Resume resume) {
      return resume(state, resume.record());
    }
    if (question instanceof Question.Abandon) {
      return abandon(state, at);
    }
    if (question instanceof Question.End || question instanceof Question.EndUnstored) {
      return Step.of(state).then(new Effect.EndSession());
    }
    throw new AssertionError(question);
  }

  /** "Negative" or "correction" alone: drops what is in question, or takes back the last value. */
  private Step takeBack(State state, Instant at) {
    if (state.question().isPresent()) {
      return negative(state, state.question().get(), at);
    }
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

  private Step negative(State state, Question question, Instant at) {
    if (question instanceof Question.Keep keep) {
      return values.drop(state, keep, at);
    }
    State answered = state.withQuestion(Optional.empty()).message("");
    if (question instanceof Question.Skipped || question instanceof Question.Twice) {
      List<Offer> rest = BandQuestions.rest(question);
      return values.offer(
          answered.withOpen(Optional.of(FieldId.BAND)).face(Face::withoutBig), rest, at);
    }
    if (question instanceof Question.Resume resume) {
      return Step.of(answered)
          .then(new Effect.AbandonRecord(resume.record(), at))
          .then(s -> prompts.prompt(s, "set aside"));
    }
    return values.goOn(answered, "going on", at);
  }

  /** Asks a field now; its value stays until another is taken. */
  Step open(State state, FieldId field) {
    if (Values.isOtherQuestion(state)) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    boolean isAsked = Dialogue.askedField(state).map(field::equals).orElse(false);
    if (!isAsked && !state.face().keys().isEmpty()) {
      return prompts.notEntered(state);
    }
    List<Offer> rest =
        state
            .question()
            .map(q -> q instanceof Question.Keep keep ? keep.rest() : List.<Offer>of())
            .orElse(List.of());
    State opened =
        state
            .withQuestion(Optional.empty())
            .withOpen(Optional.of(field))
            .face(f -> f.withoutBig().withMessage(about(state, field)).withKeys(""));
    return rest.isEmpty()
        ? prompts.prompt(opened, "")
        : values.offer(opened, rest, state.console().now());
  }

  /** The band is taken although others before it are still on the string, and stay expected. */
  Step outOfOrder(State state, Instant at) {
    if (state.question().isPresent()
        && state.question().get() instanceof Question.Skipped skipped) {
      List<Offer> offers = BandQuestions.skippedTo(skipped, List.of(BandQuestions.SKIPPED_RULE));
      return values.offer(state.withQuestion(Optional.empty()), offers, at);
    }
    return prompts.miss(state, "no band was skipped");
  }

  /** Remarks named when the bird is gone are about it: that is shown. */
  private static String about(State state, FieldId field) {
    return field == FieldId.NOTE && Values.isForLastSaved(state)
        ? "Remarks for record " + state.lastSaved().orElseThrow().id() + ", the bird saved last."
        : "";
  }

  Step repeat(State state) {
    return state.face().lastSaid().isEmpty()
        ? prompts.prompt(state, "")
        : Step.of(state).then(new Effect.Say(state.face().lastSaid()));
  }

  Step readBack(State state) {
    return Step.of(state).say(state.record().map(setup.phrases()::spoken).orElse("no bird begun"));
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

  /** Leaves the field that is asked as it is and asks the next that has no value. */
  Step next(State state) {
    if (state.question().isPresent()) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    if (!state.face().keys().isEmpty()) {
      return prompts.notEntered(state);
    }
    CaptureRecord record = values.current(state, state.console().now());
    Optional<FieldId> next = state.open().flatMap(f -> setup.form().behind(record, f));
    State moved = state.withOpen(next).face(f -> f.withoutBig().withMessage("").withKeys(""));
    return prompts.prompt(moved, "");
  }

  /**
   * Saves, where nothing required is missing and no question is open. A mass that settled meanwhile
   * is offered first and saving must be asked for again.
   */
  Step save(State state) {
    if (state.question().isPresent()) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    if (!state.face().keys().isEmpty()) {
      return prompts.notEntered(state);
    }
    if (state.record().isEmpty()) {
      return Step.of(state.message("There is no bird to save.")).say("no bird to save");
    }
    boolean isComplete = setup.form().missing(state.record().get()).isEmpty();
    return isComplete && Values.hasWaiting(state)
        ? values.offer(state, List.of(), state.console().now())
        : new Saving(setup.form()).save(state, List.of(), state.console().now());
  }

  /** The store has committed the record: only now it is called saved. */
  Step saved(State state, CaptureRecord record) {
    if (state.record().map(r -> r.id() != record.id()).orElse(true)) {
      return Step.of(state.withAccounted(record));
    }
    String line = setup.phrases().line(record);
    State after =
        state
            .withSaved(record, line)
            .withoutRecord(first())
            .message("Saved record " + record.id() + ".")
            .face(f -> f.withBig("saved", ""));
    String next = new NextBand(setup).of(after).map(b -> ". next band " + lastThree(b)).orElse("");
    String how = record.code(FieldId.RELEASE).map(this::wayOut).orElse("");
    return Step.of(after).then(new Effect.Sound(Tone.TAKEN)).say(how + "saved" + next);
  }

  /** How the bird went, where that was not the usual way. */
  private String wayOut(String code) {
    if (code.equals(Release.RELEASED.name())) {
      return "";
    }
    FieldSpec spec = setup.form().spec(FieldId.RELEASE);
    return setup.phrases().spoken(spec, new FieldValue.Code(code)) + ". ";
  }

  private static String lastThree(BandNumber band) {
    return Spoken.digits(band.lastDigits());
  }

  private FieldId first() {
    return setup.form().first();
  }

  Step askToResume(State state, CaptureRecord record) {
    return ask(state, new Question.Resume(record)).say("unfinished bird. carry on");
  }

  private Step resume(State state, CaptureRecord record) {
    State resumed =
        state
            .withRecord(record, List.of())
            .withQuestion(Optional.empty())
            .withOpen(setup.form().nextEmpty(record, first()))
            .message("");
    return prompts.prompt(resumed, setup.phrases().spoken(record));
  }

  Step askToAbandon(State state) {
    if (state.record().isEmpty()) {
      return Step.of(state.message("There is no bird to abandon.")).say("no bird begun");
    }
    return ask(state, new Question.Abandon()).say("abandon this record");
  }

  /** Asks something that is not about a value; a value in question is asked for again after it. */
  private Step ask(State state, Question question) {
    Optional<FieldId> open =
        state.question().isPresent() && state.question().get() instanceof Question.Keep keep
            ? Optional.of(keep.field())
            : state.open();
    State asked = state.withOpen(open).withQuestion(Optional.of(question)).message("");
    return Step.of(asked.face(f -> f.withoutBig().withKeys("")))
        .then(new Effect.Sound(Tone.LOOK_HERE));
  }

  private Step abandon(State state, Instant at) {
    Effect abandoned = new Effect.AbandonRecord(state.record().orElseThrow(), at);
    State after = state.withoutRecord(first()).message("Abandoned.").face(f -> f.withoutBig());
    return Step.of(after).then(abandoned).then(s -> prompts.prompt(s, "abandoned"));
  }

  Step end(State state) {
    if (state.console().isStoreDown()) {
      return ask(state, new Question.EndUnstored()).say("not everything is stored. end session");
    }
    if (state.record().isEmpty()) {
      return Step.of(state).then(new Effect.EndSession());
    }
    return ask(state, new Question.End()).say("bird unfinished. end session");
  }
}
