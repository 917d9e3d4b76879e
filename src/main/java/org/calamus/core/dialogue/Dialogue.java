package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Heard;
import org.calamus.core.speech.Meaning;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;

/**
 * The dialogue with the bander, as a pure state machine: the same state and event always give the
 * same step.
 *
 * <pre>{@code
 * Dialogue dialogue = new Dialogue(setup);
 * Step step = dialogue.step(state, event);
 * step.effects().forEach(this::perform);
 * }</pre>
 */
public final class Dialogue {

  private final Setup setup;
  private final Values values;
  private final Scales scales;
  private final Prompts prompts;
  private final Orders orders;
  private final Keypad keypad;
  private final Holding holding;
  private final Saving saving;
  private final Remarks remarks;
  private final Heeding heeding;
  private final Telling telling;
  private final Moving moving;
  private final Correcting correcting;
  private final Amending amending;
  private final Errands errands;
  private final Pages pages;
  private final Accounts accounts;
  private final Parts parts;

  /** A dialogue over a session's setup. */
  public Dialogue(Setup setup) {
    this.setup = setup;
    this.values = new Values(setup);
    this.scales = new Scales(setup);
    this.prompts = new Prompts(setup);
    this.orders = new Orders(setup);
    this.remarks = new Remarks(setup, values);
    this.keypad = new Keypad(setup, values, orders, remarks);
    this.saving = new Saving(setup);
    this.heeding = new Heeding(setup);
    this.telling = new Telling(setup);
    this.moving = new Moving(setup);
    this.correcting = new Correcting(setup);
    this.amending = new Amending(setup);
    this.errands = new Errands(setup);
    this.pages = new Pages(setup);
    this.accounts = new Accounts(setup);
    this.parts = new Parts(setup);
    this.holding = new Holding(setup.rules().policy());
  }

  /** Takes one event. */
  public Step step(State state, Event event) {
    State now = heeding.noticed(state.console(c -> c.at(event.at())), event);
    Step done = pages.checked(now, event, dispatch(now, event));
    Step step = Heeding.withEars(state, done);
    boolean mustListen = event instanceof Event.Started || !isHeardAlike(state, step.state());
    return mustListen ? step.then(new Effect.ListenFor(grammar(step.state()))) : step;
  }

  /** Tells what happens to utterances in this dialogue. */
  public Accounts accounts() {
    return accounts;
  }

  /** What to listen for in a state. */
  Grammar grammar(State state) {
    return heeding.grammar(state).orElseGet(() -> attentive(state));
  }

  private Grammar attentive(State state) {
    if (isReasonAsked(state)) {
      return setup.grammars().reasons();
    }
    Optional<FieldSpec> asked = askedField(state).map(setup.form()::spec);
    return state.question().isPresent()
        ? setup.grammars().questioning(asked)
        : setup.grammars().asking(asked);
  }

  /** Whether two states have the same grammar; told without making it, since it is long. */
  private static boolean isHeardAlike(State one, State other) {
    return Heeding.isPaused(one) == Heeding.isPaused(other)
        && one.question().isPresent() == other.question().isPresent()
        && isReasonAsked(one) == isReasonAsked(other)
        && askedField(one).equals(askedField(other));
  }

  private static boolean isReasonAsked(State state) {
    return state.question().filter(Question.Reason.class::isInstance).isPresent();
  }

  static Optional<FieldId> askedField(State state) {
    if (state.question().isEmpty()) {
      return state.open();
    }
    Question question = state.question().get();
    if (question instanceof Question.Lacking || Doubts.aboutRelease(state).isPresent()) {
      return state.open();
    }
    if (question instanceof Question.Keep keep) {
      return Optional.of(keep.field());
    }
    if (question instanceof Question.Which which) {
      return Optional.of(which.field());
    }
    return BandQuestions.isBand(question) ? Optional.of(FieldId.BAND) : Errands.heardLike(question);
  }

  private Step dispatch(State state, Event event) {
    if (event instanceof Event.Heard heard) {
      return heard(state.face(Face::withoutCautions), heard);
    }
    if (event instanceof Event.KeyStruck struck) {
      return keypad.struck(attended(state), struck.key(), struck.at());
    }
    if (event instanceof Event.ReadingArrived arrived) {
      return scales.reading(state, arrived);
    }
    if (event instanceof Event.Started started) {
      return started(state, started);
    }
    if (event instanceof Event.Saved saved) {
      return saving.saved(state, saved.record());
    }
    if (event instanceof Event.SavedRead read) {
      return correcting.read(state, read);
    }
    if (event instanceof Event.TrailRead read) {
      return pages.told(state, read);
    }
    if (event instanceof Event.ReadFailed failed) {
      return Correcting.failed(state, failed);
    }
    if (event instanceof Event.Amended amended) {
      return amending.amended(state, amended);
    }
    if (event instanceof Event.StoreFailed failed) {
      return parts.storeFailed(state, failed);
    }
    if (event instanceof Event.Stopping) {
      return Step.of(state).then(new Effect.EndSession());
    }
    if (event instanceof Event.PartDown down) {
      return Parts.down(state, down);
    }
    if (event instanceof Event.Ticked) {
      return ticked(state);
    }
    if (event instanceof Event.MemoRecorded memo && Amending.isReason(state, memo.name())) {
      return amending.told(state, memo.name());
    }
    if (event instanceof Event.MemoFailed memo && Amending.isTelling(state)) {
      return amending.untold(state, memo.sentence());
    }
    if (event instanceof Event.MemoRecorded memo) {
      return remarks.recorded(state, memo);
    }
    if (event instanceof Event.MemoFailed memo) {
      return remarks.failed(state, memo);
    }
    return Step.of(console(state, event));
  }

  /** A second has passed: what is due is said, one thing at a time. */
  private Step ticked(State state) {
    Step step = holding.ticked(state).then(heeding::ticked);
    boolean isSaying = step.effects().stream().anyMatch(Effect.Say.class::isInstance);
    return isSaying ? step : step.then(telling::ticked);
  }

  private State console(State state, Event event) {
    if (event instanceof Event.LevelMeasured level) {
      return state.console(c -> c.withLevel(level.decibels(), level.isSpeech()));
    }
    if (event instanceof Event.VoiceBegan) {
      return state.console(c -> c.withSpeaking(true).withLevel(c.decibels(), false));
    }
    if (event instanceof Event.VoiceEnded) {
      return state.console(c -> c.withSpeaking(false)).face(Face::withSaid);
    }
    if (event instanceof Event.PartUp up) {
      return parts.up(state, up);
    }
    throw new AssertionError(event);
  }

  private Step started(State state, Event.Started started) {
    if (started.unfinished().isEmpty()) {
      return Step.of(state).then(s -> prompts.prompt(s, ""));
    }
    return orders.askToResume(state, started.unfinished().get(), started.saved());
  }

  private Step heard(State state, Event.Heard heard) {
    if (Heeding.isUnheeded(state)) {
      return Step.of(state);
    }
    if (Heeding.isPaused(state)) {
      return heeding.isResuming(heard.utterance())
          ? heeding.order(state, Command.RESUME, heard.at())
          : Step.of(state);
    }
    Step step = understood(Heeding.closed(state), heard);
    boolean isMissed = step.state().face().misses() > state.face().misses();
    boolean isOverheard = step.state().face().message().equals(Prompts.OVERHEARD);
    return isMissed || isOverheard ? withWords(step, heard.utterance()) : step;
  }

  /** What was heard and not understood is shown, so that the bander sees what was misheard. */
  private static Step withWords(Step step, Utterance utterance) {
    String words = utterance.text().replace(Word.UNKNOWN, "...");
    String shown = step.state().face().message() + " Heard: \"" + words + "\"";
    return new Step(step.state().message(shown), step.effects());
  }

  /** The bander does something: no more is read back. */
  private static State attended(State state) {
    return state.face(f -> f.withoutCautions().withRest(List.of()));
  }

  private Step understood(State state, Event.Heard event) {
    Circumstances met = Circumstances.of(state, setup);
    Event.Heard heard = event.as(accounts.heardAs(met, event.at(), event.utterance()));
    Meaning meaning = accounts.meaning(met, event.at(), heard.utterance());
    boolean isMissed = meaning instanceof Meaning.Chatter || meaning instanceof Meaning.Unclear;
    boolean isNamed = isNamedInQuestion(state, heard.utterance());
    if (isMissed && isNamed) {
      State here = Heeding.understood(attended(Pages.heard(state, meaning)), heard.at());
      return prompts.miss(here, Questions.answers(state.question().orElseThrow()));
    }
    if (meaning instanceof Meaning.Chatter) {
      return heeding.chatter(state, heard);
    }
    State here = Pages.heard(state, meaning);
    if (meaning instanceof Meaning.Unclear unclear) {
      return heeding.unclear(attended(here), heard, unclear.hint());
    }
    boolean isNothing =
        meaning instanceof Meaning.Values given
            && given.items().stream().allMatch(i -> i.heard() instanceof Heard.No);
    return isNothing && !isNamed
        ? heeding.rejecting(attended(here), heard.at(), s -> meant(s, meaning, heard))
        : meant(Heeding.understood(attended(here), heard.at()), meaning, heard);
  }

  /** Whether a field is named while a question is open: that is no talk of other people. */
  private boolean isNamedInQuestion(State state, Utterance utterance) {
    return Doubts.goneOn(state).question().isPresent() && setup.interpreter().isNaming(utterance);
  }

  private Step meant(State state, Meaning meaning, Event.Heard heard) {
    if (meaning instanceof Meaning.Values given && Errands.isOpen(state)) {
      return errands.said(state, given, heard.at());
    }
    if (meaning instanceof Meaning.Amend amend) {
      return correcting.ending(state, amend.digits());
    }
    if (meaning instanceof Meaning.Values given) {
      return values.said(
          state.face(f -> f.withKeys("")), given, heard.utterance().text(), heard.at());
    }
    if (meaning instanceof Meaning.Open named) {
      Step opened = moving.open(state, named.field());
      return remarks.isAsked(opened.state())
          ? opened.then(s -> remarks.listen(s, heard.at()))
          : opened;
    }
    if (meaning instanceof Meaning.Order order) {
      return orders.order(state, order.command(), order.field(), heard.at());
    }
    throw new AssertionError(meaning);
  }
}
