package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.Settled;
import org.calamus.core.instrument.Weighing;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
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

  /** The failure itself stands with the part that is down, for as long as it is. */
  private static final String NOT_STORED =
      "Not stored yet. Go on: the values are kept here and stored as soon as that works.";

  private final Setup setup;
  private final Values values;
  private final Offers offers;
  private final Prompts prompts;
  private final Orders orders;
  private final Keypad keypad;
  private final Holding holding;
  private final Saving saving;
  private final Remarks remarks;
  private final Heeding heeding;

  /** A dialogue over a session's setup. */
  public Dialogue(Setup setup) {
    this.setup = setup;
    this.values = new Values(setup);
    this.offers = new Offers(setup);
    this.prompts = new Prompts(setup);
    this.orders = new Orders(setup);
    this.remarks = new Remarks(setup, values);
    this.keypad = new Keypad(setup, values, orders, remarks);
    this.saving = new Saving(setup);
    this.heeding = new Heeding(setup);
    this.holding = new Holding(setup.rules().policy());
  }

  /** Takes one event. */
  public Step step(State state, Event event) {
    State now = heeding.noticed(state.console(c -> c.at(event.at())), event);
    Step step = Heeding.withEars(state, dispatch(now, event));
    boolean mustListen = event instanceof Event.Started || !isHeardAlike(state, step.state());
    return mustListen ? step.then(new Effect.ListenFor(grammar(step.state()))) : step;
  }

  /** What to listen for in a state. */
  Grammar grammar(State state) {
    return heeding.grammar(state).orElseGet(() -> attentive(state));
  }

  private Grammar attentive(State state) {
    Optional<FieldSpec> asked = askedField(state).map(setup.form()::spec);
    return state.question().isPresent()
        ? setup.grammars().questioning(asked)
        : setup.grammars().asking(asked);
  }

  /** Whether two states have the same grammar; told without making it, since it is long. */
  private static boolean isHeardAlike(State one, State other) {
    return Heeding.isPaused(one) == Heeding.isPaused(other)
        && one.question().isPresent() == other.question().isPresent()
        && askedField(one).equals(askedField(other));
  }

  static Optional<FieldId> askedField(State state) {
    if (state.question().isEmpty()) {
      return state.open();
    }
    Question question = state.question().get();
    if (question instanceof Question.Keep keep) {
      return Optional.of(keep.field());
    }
    boolean isAboutBand =
        question instanceof Question.Skipped || question instanceof Question.Twice;
    return isAboutBand ? Optional.of(FieldId.BAND) : Optional.empty();
  }

  private Step dispatch(State state, Event event) {
    if (event instanceof Event.Heard heard) {
      return heard(state.face(Face::withoutCautions), heard);
    }
    if (event instanceof Event.KeyStruck struck) {
      return keypad.struck(state.face(Face::withoutCautions), struck.key(), struck.at());
    }
    if (event instanceof Event.ReadingArrived arrived) {
      return reading(state, arrived);
    }
    if (event instanceof Event.Started started) {
      return started(state, started);
    }
    if (event instanceof Event.Saved saved) {
      return saving.saved(state, saved.record());
    }
    if (event instanceof Event.StoreFailed failed) {
      return storeFailed(state, failed);
    }
    if (event instanceof Event.Stopping) {
      return Step.of(state).then(new Effect.EndSession());
    }
    if (event instanceof Event.PartDown down) {
      return partDown(state, down);
    }
    if (event instanceof Event.Ticked) {
      return holding.ticked(state).then(heeding::ticked);
    }
    if (event instanceof Event.MemoRecorded memo) {
      return remarks.recorded(state, memo);
    }
    if (event instanceof Event.MemoFailed memo) {
      return remarks.failed(state, memo);
    }
    return Step.of(console(state, event));
  }

  private State console(State state, Event event) {
    if (event instanceof Event.LevelMeasured level) {
      return state.console(c -> c.withLevel(level.decibels(), level.isSpeech()));
    }
    if (event instanceof Event.VoiceBegan) {
      return state.console(c -> c.withSpeaking(true).withLevel(c.decibels(), false));
    }
    if (event instanceof Event.VoiceEnded) {
      return state.console(c -> c.withSpeaking(false));
    }
    if (event instanceof Event.PartUp up) {
      return partUp(state, up);
    }
    throw new AssertionError(event);
  }

  private static State partUp(State state, Event.PartUp up) {
    State told = state.console(c -> c.withHealth(new View.Health(up.part(), true, up.name())));
    boolean isStoredNow = up.part() == Part.STORE && state.face().message().equals(NOT_STORED);
    return isStoredNow ? told.message("Stored now.") : told;
  }

  /**
   * A part that worked and no longer does is told by a tone, too. A scale that went away in
   * mid-weighing has settled nothing: what it had sent is forgotten.
   */
  private static Step partDown(State state, Event.PartDown down) {
    boolean wasUp =
        Optional.ofNullable(state.console().health().get(down.part()))
            .map(View.Health::isUp)
            .orElse(false);
    State told =
        state.console(c -> c.withHealth(new View.Health(down.part(), false, down.sentence())));
    Step step = Step.of(down.part() == Part.SCALE ? told.console(Console::withoutReading) : told);
    return wasUp ? step.then(new Effect.Sound(Tone.LOOK_HERE)) : step;
  }

  private Step started(State state, Event.Started started) {
    if (started.unfinished().isEmpty()) {
      return Step.of(state).then(s -> prompts.prompt(s, ""));
    }
    return orders.askToResume(state, started.unfinished().get());
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
    return isMissed ? withWords(step, heard.utterance()) : step;
  }

  /** What was heard and not understood is shown, so that the bander sees what was misheard. */
  private static Step withWords(Step step, Utterance utterance) {
    String words = utterance.text().replace(Word.UNKNOWN, "...");
    String shown = step.state().face().message() + " Heard: \"" + words + "\"";
    return new Step(step.state().message(shown), step.effects());
  }

  private Step understood(State state, Event.Heard heard) {
    Optional<FieldId> inQuestion =
        state.question().isPresent() ? askedField(state) : Optional.empty();
    Meaning meaning =
        setup
            .interpreter()
            .interpret(
                heard.utterance(),
                askedField(state),
                inQuestion.or(state::lastGiven),
                new NextBand(setup).completing(state));
    if (meaning instanceof Meaning.Chatter) {
      return heeding.chatter(state, heard);
    }
    if (meaning instanceof Meaning.Unclear unclear) {
      return heeding.unclear(state, heard, unclear.hint());
    }
    boolean isNothing =
        meaning instanceof Meaning.Values given
            && given.items().stream().allMatch(i -> i.heard() instanceof Heard.No);
    return isNothing
        ? heeding.rejecting(state, heard.at(), s -> meant(s, meaning, heard))
        : meant(Heeding.understood(state, heard.at()), meaning, heard);
  }

  private Step meant(State state, Meaning meaning, Event.Heard heard) {
    if (meaning instanceof Meaning.Values given) {
      return values.said(
          state.face(f -> f.withKeys("")), given, heard.utterance().text(), heard.at());
    }
    State understood = state.face(f -> f.withMisses(0));
    if (meaning instanceof Meaning.Open named) {
      Step opened = orders.open(understood, named.field());
      return remarks.isAsked(opened.state())
          ? opened.then(s -> remarks.listen(s, heard.at()))
          : opened;
    }
    if (meaning instanceof Meaning.Order order) {
      return orders.order(understood, order.command(), order.field(), heard.at());
    }
    throw new AssertionError(meaning);
  }

  private Step reading(State state, Event.ReadingArrived arrived) {
    DeviceDescription device = setup.devices().get(arrived.device());
    if (device == null) {
      return Step.of(state);
    }
    Weighing before =
        state.console().weighings().getOrDefault(arrived.device(), Weighing.idle(device.rule()));
    Weighing after = before.step(arrived.reading(), arrived.at());
    State shown = state.console(c -> c.withReading(arrived.device(), arrived.reading(), after));
    return after.settled().isEmpty()
        ? Step.of(shown)
        : settled(shown, device, after.settled().get(), arrived.at());
  }

  /**
   * A settled value is taken once a bird: a field that has its value is left as it is. It waits
   * while a question is open or keys are struck that are not entered yet.
   */
  private Step settled(State state, DeviceDescription device, Settled settled, Instant at) {
    boolean isWanted =
        state.record().isPresent() && state.record().get().entry(device.field()).isEmpty();
    if (!isWanted) {
      return Step.of(state);
    }
    String detail =
        device.name()
            + ", "
            + settled.how().words()
            + ": "
            + String.join(" | ", settled.rawLines());
    Offer offer =
        new Offer(
            device.field(),
            new Heard.One(settled.value()),
            new Provenance(Provenance.Way.MEASURED, detail));
    boolean mustWait = state.question().isPresent() || !state.face().keys().isEmpty();
    return mustWait
        ? Step.of(state.console(c -> c.withWaiting(Optional.of(offer))))
        : offers.offer(state, List.of(offer), at);
  }

  /**
   * A value that could not be stored stays in the record and is held until it can be; the field
   * that is asked now is named, so that the value is not given to it once more.
   */
  private Step storeFailed(State state, Event.StoreFailed failed) {
    View.Health down = new View.Health(Part.STORE, false, failed.sentence());
    State told = state.console(c -> c.withHealth(down)).message(NOT_STORED).face(Face::withoutBig);
    Step look = Step.of(told).then(new Effect.Sound(Tone.LOOK_HERE));
    return told.question().isPresent()
        ? look.say("not stored yet. a question is open. look at the screen")
        : look.then(s -> prompts.prompt(s, "not stored yet"));
  }
}
