package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;

/**
 * The part of the dialogue that decides whether speech is for the console: it pauses and goes on,
 * by word, by key and by itself, and has the talk key open the ears.
 */
final class Heeding {

  /** How long the talk key leaves the ears open for somebody who does not speak. */
  private static final Duration LONGEST_OPEN = Duration.ofSeconds(8);

  private final Setup setup;
  private final Prompts prompts;

  Heeding(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
  }

  /** The session begins as the station wants it. */
  State begun(State state, Instant at) {
    Talk talk = setup.heed().talk();
    Attention start = Attention.atStart();
    Attention wanted = talk == Talk.KEY ? start.withTalk(talk, at) : start.active(at);
    return state.console(c -> c.attending(a -> wanted));
  }

  /** Whether the ears shall be open, as far as attention goes. */
  static boolean wantsEars(State state) {
    boolean isKeyed = state.console().attention().wantsKey();
    return !isKeyed || Remarks.isListening(state);
  }

  /** Adds to a step that the ears are shut or opened by it. */
  static Step withEars(State before, Step step) {
    boolean isOpen = wantsEars(step.state());
    if (isOpen == wantsEars(before)) {
      return step;
    }
    return step.then(isOpen ? new Effect.OpenEars() : new Effect.ShutEars());
  }

  /** What to listen for while nothing but going on may be said; empty where more may. */
  Optional<Grammar> grammar(State state) {
    return isPaused(state) ? Optional.of(setup.grammars().paused()) : Optional.empty();
  }

  static boolean isPaused(State state) {
    return state.console().attention().isPaused();
  }

  /** What an event says of attention, whatever else it leads to. */
  State noticed(State state, Event event) {
    Attention now = state.console().attention();
    if (event instanceof Event.Started) {
      return begun(state, event.at());
    }
    boolean isPluggedIn = event instanceof Event.PartUp up && up.part() == Part.EARS;
    if (event instanceof Event.KeyStruck || isPluggedIn) {
      return state.console(c -> c.attending(a -> a.active(event.at())));
    }
    boolean isHeldUp = event instanceof Event.VoiceEnded && now.openSince().isPresent();
    return isHeldUp ? state.console(c -> c.attending(a -> a.opened(event.at()))) : state;
  }

  /** Whether an utterance is for nobody here. */
  static boolean isUnheeded(State state) {
    return state.console().isSpeaking() || state.console().attention().wantsKey();
  }

  /** Whether the bander says that the console shall listen again; anything else goes unheeded. */
  boolean isResuming(Utterance utterance) {
    return setup.interpreter().isResuming(utterance);
  }

  /** What the talk key had opened the ears for has been said. */
  static State closed(State state) {
    return state.console(c -> c.attending(Attention::closed));
  }

  /** Speech was understood. */
  static State understood(State state, Instant at) {
    return state.console(c -> c.attending(a -> a.understood(at)));
  }

  /** Sound that was not meant for the console, unless the talk key was pressed for it. */
  Step chatter(State state, Event.Heard heard) {
    if (state.console().attention().talk() == Talk.KEY) {
      return prompts.miss(state, "");
    }
    // a noise is no sign of other people; while a question is open much that is said of the bird is
    // not listened for and sounds like talk
    return setup.interpreter().isNoise(heard.utterance()) || state.question().isPresent()
        ? Step.of(state)
        : rejecting(state, heard.at(), Step::of);
  }

  /**
   * Speech that was not understood. Where it sounds like other people's talk only the tone answers,
   * unless the talk key was pressed for it.
   */
  Step unclear(State state, Event.Heard heard, String hint) {
    boolean isTalk = hint.isEmpty() && setup.interpreter().isTalk(heard.utterance());
    boolean isWanted = state.console().attention().talk() == Talk.KEY;
    return rejecting(
        state, heard.at(), s -> isTalk && !isWanted ? Prompts.overheard(s) : prompts.miss(s, hint));
  }

  /** Speech of which nothing was understood: others' talk where it is one time too many. */
  Step rejecting(State state, Instant at, Function<State, Step> otherwise) {
    State counted = state.console(c -> c.attending(a -> a.rejecting(at)));
    if (counted.console().attention().isAmongOthers()) {
      return byKey(counted, "Others are talking. ", "others are talking. press to talk", at);
    }
    return otherwise.apply(counted);
  }

  /** The talk key: ends what is being said, or opens the ears for it. */
  Step pressed(State state, Instant at) {
    Attention now = state.console().attention();
    if (now.talk() == Talk.KEY) {
      State opened = state.console(c -> c.attending(a -> a.opened(at)));
      return now.openSince().isPresent()
          ? Step.of(opened).then(new Effect.FinishUtterance())
          : Step.of(opened);
    }
    return now.isPaused() ? resume(state, at) : Step.of(state).then(new Effect.FinishUtterance());
  }

  /** Carries out one of the commands that are about attention. */
  Step order(State state, Command command, Instant at) {
    switch (command) {
      case STAND_BY:
        return isPaused(state)
            ? told(state, "already paused")
            : paused(state, "Paused: nothing said is taken, keys and instruments are. ");
      case RESUME:
        return isPaused(state) ? resume(state, at) : told(state, "already listening");
      case TALK_KEY:
        return byKey(state, "", "press to talk", at);
      case TALK_OPEN:
        return told(
            state.console(c -> c.attending(a -> a.withTalk(Talk.OPEN, at))).message("Listening."),
            withLast(state, "listening"));
      default:
        throw new AssertionError(command);
    }
  }

  /** Said so that "say again" still repeats what the bander was told of the bird. */
  private static Step told(State state, String phrase) {
    return Step.of(state).then(new Effect.Say(phrase));
  }

  private static String withLast(State state, String phrase) {
    String last = state.face().lastSaid();
    return last.isEmpty() ? phrase : phrase + ". " + last;
  }

  private Step resume(State state, Instant at) {
    State resumed = state.console(c -> c.attending(a -> a.resumed(at))).message("Listening.");
    return told(resumed, withLast(state, "listening"));
  }

  private Step paused(State state, String why) {
    String shown = why + "To go on " + sayable(Command.RESUME) + "press the talk key.";
    Step paused = Step.of(state.console(c -> c.attending(Attention::paused)).message(shown));
    return (Remarks.isListening(state) ? paused.then(new Effect.StopMemo()) : paused)
        .then(s -> told(s, "paused"));
  }

  private Step byKey(State state, String why, String phrase, Instant at) {
    String shown =
        why
            + "The talk key (space bar) opens the ears for one utterance. To listen all the time "
            + sayable(Command.TALK_OPEN)
            + "strike "
            + Sayable.keys(Command.TALK_OPEN)
            + ".";
    return told(
        state.console(c -> c.attending(a -> a.withTalk(Talk.KEY, at))).message(shown), phrase);
  }

  private String sayable(Command command) {
    return setup.words(command).map(words -> "say \"" + words + "\" or ").orElse("");
  }

  /**
   * A second has passed: nobody spoke after the talk key, or the console was of no use for long.
   * With a bird in the hand, a question open or remarks being spoken it never pauses by itself.
   */
  Step ticked(State state) {
    Console console = state.console();
    boolean isBusy = console.isSpeaking() || console.isHearing();
    Instant now = console.now();
    Attention attention = console.attention();
    boolean isUnused =
        attention.openSince().filter(s -> !now.isBefore(s.plus(LONGEST_OPEN))).isPresent();
    if (isUnused && !isBusy) {
      return Step.of(closed(state));
    }
    boolean isInUse =
        state.record().isPresent() || state.question().isPresent() || Remarks.isListening(state);
    if (isInUse) {
      return Step.of(state.console(c -> c.attending(a -> a.active(now))));
    }
    Duration limit = setup.heed().pauseAfter();
    boolean mayPause =
        !limit.isZero()
            && attention.hasBegun()
            && hasEars(console)
            && attention.talk() == Talk.OPEN
            && !attention.isPaused()
            && !isBusy;
    return mayPause && !now.isBefore(attention.activeAt().plus(limit))
        ? paused(state, "Paused after " + minutes(limit) + " without a bird. ")
        : Step.of(state);
  }

  /** Without ears there is nothing to pause, and nobody to be told how to go on. */
  private static boolean hasEars(Console console) {
    return console.isUp(Part.EARS);
  }

  private static String minutes(Duration time) {
    return time.toMinutes() + (time.toMinutes() == 1 ? " minute" : " minutes");
  }

  /** What may be said or pressed to be heard at all, for the hints. */
  List<View.Hint> hints(State state) {
    if (isPaused(state)) {
      return List.of(new View.Hint(setup.words(Command.RESUME).orElse(""), "space", "listen"));
    }
    return state.console().attention().wantsKey()
        ? List.of(new View.Hint("", "space", "talk"))
        : List.of();
  }
}
