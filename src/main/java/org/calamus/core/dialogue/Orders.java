package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Command;

/** The part of the dialogue that carries out commands and answers. */
final class Orders {

  private final Setup setup;
  private final Offers offers;
  private final Taking taking;
  private final TakingBack takingBack;
  private final Scribe scribe;
  private final Moving moving;
  private final Telling telling;
  private final Prompts prompts;
  private final Heeding heeding;
  private final Correcting correcting;
  private final Amending amending;
  private final Errands errands;
  private final NetOrders nets;
  private final Pages pages;

  Orders(Setup setup) {
    this.setup = setup;
    this.offers = new Offers(setup);
    this.taking = new Taking(setup);
    this.takingBack = new TakingBack(setup);
    this.scribe = new Scribe(setup);
    this.moving = new Moving(setup);
    this.telling = new Telling(setup);
    this.prompts = new Prompts(setup);
    this.heeding = new Heeding(setup);
    this.correcting = new Correcting(setup);
    this.amending = new Amending(setup);
    this.errands = new Errands(setup);
    this.nets = new NetOrders(setup);
    this.pages = new Pages(setup);
  }

  /** Carries out a command, wherever it came from. What is about a bird leaves the page. */
  Step order(State state, Command command, Optional<FieldId> field, Instant at) {
    boolean isOfPage = field.isEmpty() && Pages.isOfPage(state, command);
    return isOfPage
        ? pages.order(state, command)
        : carryOut(Pages.isLeaving(command) ? Pages.left(state) : state, command, field, at);
  }

  private Step carryOut(State state, Command command, Optional<FieldId> field, Instant at) {
    switch (command) {
      case AFFIRM:
        return affirm(state, at);
      case NEGATIVE:
        return field.isPresent() ? moving.open(state, field.get()) : refuse(state, at);
      case CORRECT:
        // the value behind which evidence is asked for is taken, and can be taken back
        return field.isPresent()
            ? moving.open(state, field.get())
            : refuse(Doubts.goneOn(state), at);
      case REPEAT:
        return telling.repeat(state);
      case READBACK:
        return telling.readBack(state, field);
      case READ_FIELD:
        return telling.readBack(state, Dialogue.askedField(state).or(state::lastGiven));
      case MISSING:
        return telling.missing(state, taking.current(state, at));
      case HELP:
        return telling.help(state);
      case ERASE:
        return Scribe.isErased(state, field)
            ? scribe.erase(state)
            : takingBack.erase(state, field, at);
      case NEXT:
        return moving.next(state);
      case PREVIOUS:
        return moving.previous(state);
      case SAVE:
        return save(state);
      case ABANDON:
        return askToAbandon(state);
      case OUT_OF_ORDER:
        return outOfOrder(state, at);
      case OPEN_NETS:
        return nets.ask(state, NetEvent.What.OPENED);
      case CLOSE_NETS:
        return nets.ask(state, NetEvent.What.CLOSED);
      case AMEND:
        return correcting.ask(state);
      case REASON_MISHEARD:
      case REASON_MISKEYED:
      case REASON_MISREAD:
      case REASON_WRONG_FIELD:
      case REASON_IDENTIFIED_ANEW:
      case REASON_OTHER:
        return amending.reason(state, command.reason().orElseThrow(), at);
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
      return state.open().isEmpty() ? save(state) : telling.repeat(state);
    }
    Question question = state.question().get();
    if (question instanceof Question.Keep keep) {
      return offers.keep(state.withQuestion(Optional.empty()), keep, at);
    }
    if (question instanceof Question.Lacking lacking) {
      return offers.without(state, lacking, at);
    }
    if (BandQuestions.isBand(question) || question instanceof Question.Which) {
      return prompts.miss(state, Questions.answers(question));
    }
    if (Errands.isErrand(question)) {
      return errands.affirm(state, at);
    }
    if (question instanceof Question.Resume resume) {
      return resume
          .saved()
          .map(saved -> correcting.resume(state, resume.record(), saved))
          .orElseGet(() -> resume(state, resume.record()));
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
  private Step refuse(State state, Instant at) {
    return state.question().isPresent()
        ? negative(state, state.question().get(), at)
        : takingBack.takeBack(state, at);
  }

  private Step negative(State state, Question question, Instant at) {
    if (question instanceof Question.Keep keep) {
      return offers.drop(state, keep, at);
    }
    State answered = state.withQuestion(Optional.empty()).message("");
    if (question instanceof Question.Lacking lacking) {
      return prompts.prompt(answered.withOpen(Optional.of(lacking.evidence())), "");
    }
    if (question instanceof Question.Which which) {
      return offers.offer(
          answered.withOpen(Optional.of(which.field())).face(Face::withoutBig), which.rest(), at);
    }
    if (question instanceof Question.Skipped || question instanceof Question.Twice) {
      List<Offer> rest = BandQuestions.rest(question);
      State open = answered.withOpen(Optional.of(FieldId.BAND)).face(Face::withoutBig);
      return TakingBack.withoutConclusions(open, FieldId.BAND, at)
          .then(s -> offers.offer(s, rest, at));
    }
    if (question instanceof Question.Resume resume) {
      Effect setAside =
          resume.saved().isPresent()
              ? new Effect.WithdrawCorrection(resume.record().id(), at)
              : new Effect.AbandonRecord(resume.record(), at);
      return Step.of(answered)
          .then(setAside)
          .then(s -> prompts.prompt(s, resume.saved().isPresent() ? "given up" : "set aside"));
    }
    if (Errands.isErrand(question)) {
      return errands.negative(answered.face(f -> f.withKeys("")));
    }
    return offers.goOn(answered, "going on", at);
  }

  /** The band is taken although others before it are still on the string, and stay expected. */
  Step outOfOrder(State state, Instant at) {
    if (state.question().isPresent()
        && state.question().get() instanceof Question.Skipped skipped) {
      List<Offer> band = BandQuestions.skippedTo(skipped, List.of(BandQuestions.SKIPPED_RULE));
      return offers.offer(state.withQuestion(Optional.empty()), band, at);
    }
    return prompts.miss(state, "no band was skipped");
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
    return isComplete && Offers.hasWaiting(state)
        ? offers.offer(state, List.of(), state.console().now())
        : new Saving(setup).save(state, List.of(), state.console().now());
  }

  private FieldId first() {
    return setup.form().first();
  }

  Step askToResume(State state, CaptureRecord record, Optional<CaptureRecord> saved) {
    String what = saved.isPresent() ? "unfinished correction" : "unfinished bird";
    return ask(state, new Question.Resume(record, saved)).say(what + ". carry on");
  }

  private Step resume(State state, CaptureRecord record) {
    State resumed =
        state
            .withRecord(record, TakingBack.changes(record))
            .withQuestion(Optional.empty())
            .withOpen(setup.form().nextEmpty(record, first()))
            .message("");
    return prompts.prompt(resumed, setup.phrases().spoken(record));
  }

  Step askToAbandon(State state) {
    if (state.record().isEmpty()) {
      return Step.of(state.message("There is no bird to abandon.")).say("no bird begun");
    }
    return ask(state, new Question.Abandon())
        .say(state.isCorrecting() ? "give this correction up" : "abandon this record");
  }

  /** Asks something that is not about a value; a value in question is asked for again after it. */
  private Step ask(State state, Question question) {
    Optional<FieldId> open =
        state.question().isPresent() && state.question().get() instanceof Question.Keep
            ? Dialogue.askedField(state)
            : state.open();
    State asked = state.withOpen(open).withQuestion(Optional.of(question)).message("");
    return Step.of(asked.face(f -> f.withoutBig().withKeys("")))
        .then(new Effect.Sound(Tone.LOOK_HERE));
  }

  private Step abandon(State state, Instant at) {
    if (state.isCorrecting()) {
      return correcting.giveUp(state, at);
    }
    Effect abandoned = new Effect.AbandonRecord(state.record().orElseThrow(), at);
    State after = state.withoutRecord(first()).message("Abandoned.").face(f -> f.withoutBig());
    return Step.of(after).then(abandoned).then(s -> prompts.prompt(s, "abandoned"));
  }

  Step end(State state) {
    if (state.console().isStoreDown()) {
      return ask(state, new Question.EndUnstored()).say("not everything is stored. end session");
    }
    List<String> open = state.desk().nets().open();
    if (state.record().isEmpty() && open.isEmpty()) {
      return Step.of(state).then(new Effect.EndSession());
    }
    if (state.record().isEmpty()) {
      return ask(state, new Question.End()).say("nets are open. end session");
    }
    return ask(state, new Question.End())
        .say((state.isCorrecting() ? "correction" : "bird") + " unfinished. end session");
  }
}
