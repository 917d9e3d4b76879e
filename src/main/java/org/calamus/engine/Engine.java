package org.calamus.engine;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.Step;
import org.calamus.core.dialogue.Views;
import org.calamus.port.EventSink;

/**
 * The one loop of a session: takes an event, steps the dialogue, performs the effects, shows the
 * view. All state belongs to the thread that calls {@link #run}.
 *
 * <pre>{@code
 * Engine engine = new Engine(dialogue, views, ports);
 * ears.start(engine);          // adapters post from their own threads
 * engine.run(state);           // returns when the session has ended
 * }</pre>
 */
public final class Engine implements EventSink {

  private static final long TICK_MILLIS = 1000;

  /** Longer than any phrase; a voice that has not ended by then never will. */
  private static final Duration LONGEST_PHRASE = Duration.ofSeconds(60);

  private final BlockingQueue<Event> queue = new LinkedBlockingQueue<>();
  private final Dialogue dialogue;
  private final Views views;
  private final Ports ports;
  private final Keeper keeper;
  private final Deque<Event> answers = new ArrayDeque<>();
  private int phrasesSpoken;
  private boolean isHushed;
  private boolean isUnheeding;
  private Instant lastSaid = Instant.EPOCH;
  private volatile boolean hasEnded;

  /** An engine for one session. */
  public Engine(Dialogue dialogue, Views views, Ports ports) {
    this.dialogue = dialogue;
    this.views = views;
    this.ports = ports;
    this.keeper = new Keeper(ports.store(), ports.clock(), answers::add);
  }

  @Override
  public void post(Event event) {
    if (!hasEnded) {
      queue.add(event);
    }
  }

  /**
   * Runs the session until it ends, however it ends. What the store still holds back then is tried
   * once more; where that fails too, the store's health in the state says so.
   *
   * @param start the state to begin with
   * @return the state at the end
   * @throws InterruptedException where the thread is interrupted; everything taken is safe then
   */
  public State run(State start) throws InterruptedException {
    State end;
    try {
      end = untilEnded(start);
    } finally {
      keeper.catchUp();
    }
    return answered(end);
  }

  private State untilEnded(State start) throws InterruptedException {
    State state = start;
    Instant ticked = ports.clock().now();
    while (!hasEnded) {
      Event event = queue.poll(TICK_MILLIS, TimeUnit.MILLISECONDS);
      if (event != null) {
        state = handle(state, event);
      }
      Instant now = ports.clock().now();
      if (!hasEnded && (event == null || isTickDue(ticked, now))) {
        ticked = now;
        keeper.catchUp();
        state = handle(state, new Event.Ticked(now));
        state = unlessStuck(state, now);
      }
    }
    return state;
  }

  /** A steady stream of events must not keep the ticks away, nor a clock that was set back. */
  private static boolean isTickDue(Instant last, Instant now) {
    return now.isBefore(last) || Duration.between(last, now).toMillis() >= TICK_MILLIS;
  }

  /** A voice that broke in mid-phrase must not keep the ears shut for ever. */
  private State unlessStuck(State state, Instant now) {
    if (phrasesSpoken == 0 || now.isBefore(lastSaid.plus(LONGEST_PHRASE))) {
      return state;
    }
    phrasesSpoken = 1;
    State opened = handle(state, new Event.VoiceEnded(now));
    String sentence = "The voice did not end its phrase; read on the screen, or start again.";
    return handle(opened, new Event.PartDown(now, Part.VOICE, sentence));
  }

  private State handle(State state, Event event) {
    if (event instanceof Event.VoiceEnded && !isLastPhrase()) {
      return state;
    }
    return answered(stepped(state, event));
  }

  /**
   * The store's answers come before anything that happened meanwhile: a value that was said while a
   * record was being saved belongs to the next record.
   */
  private State answered(State state) {
    State after = state;
    while (!answers.isEmpty()) {
      after = stepped(after, answers.remove());
    }
    return after;
  }

  private State stepped(State state, Event event) {
    Step step = dialogue.step(state, event);
    perform(step.effects());
    var view = views.of(step.state());
    ports.watcher().stepped(event, step.effects(), view);
    ports.screen().show(view);
    if (event instanceof Event.Heard heard) {
      ports.keeper().became(heard, () -> dialogue.accounts().of(state, heard, step));
    }
    return step.state();
  }

  /** Counts the phrases that have ended; the ears open again only after the last. */
  private boolean isLastPhrase() {
    phrasesSpoken = Math.max(0, phrasesSpoken - 1);
    if (phrasesSpoken > 0) {
      return false;
    }
    if (!isHushed && !isUnheeding) {
      ports.ears().open();
    }
    isHushed = false;
    return true;
  }

  private void openUnlessUnheeding() {
    if (!isUnheeding) {
      ports.ears().openAtOnce();
    }
  }

  /** While the voice speaks the ears stay shut; they open behind it. */
  private void openUnlessSpeaking() {
    if (phrasesSpoken == 0 || isHushed) {
      ports.ears().openAtOnce();
    }
  }

  private void perform(List<Effect> effects) {
    boolean hasFailed = false;
    for (Effect effect : effects) {
      boolean claims = effect instanceof Effect.Say || effect instanceof Effect.Sound;
      if (Keeper.isForStore(effect) && hasFailed) {
        keeper.hold(effect);
      } else if (Keeper.isForStore(effect)) {
        hasFailed = !keeper.keep(effect);
      } else if (!(hasFailed && claims)) {
        perform(effect);
      }
    }
  }

  private void perform(Effect effect) {
    if (effect instanceof Effect.Say say) {
      phrasesSpoken++;
      lastSaid = ports.clock().now();
      isHushed = false;
      ports.ears().shut();
      ports.voice().say(say.phrase());
    } else if (effect instanceof Effect.Hush) {
      isHushed = true;
      ports.voice().hush();
      openUnlessUnheeding();
    } else if (effect instanceof Effect.ShutEars) {
      isUnheeding = true;
      ports.ears().shut();
    } else if (effect instanceof Effect.OpenEars) {
      isUnheeding = false;
      openUnlessSpeaking();
    } else if (effect instanceof Effect.Sound sound) {
      ports.voice().sound(sound.tone());
    } else if (effect instanceof Effect.ListenFor listen) {
      ports.ears().listenFor(listen.grammar());
    } else if (effect instanceof Effect.FinishUtterance) {
      ports.ears().finishUtterance();
    } else if (effect instanceof Effect.RecordMemo memo) {
      ports.ears().recordMemo(ports.memos().named(memo.name()), memo.longest());
    } else if (effect instanceof Effect.StopMemo) {
      ports.ears().stopMemo();
    } else if (effect instanceof Effect.EndSession) {
      hasEnded = true;
    } else {
      throw new AssertionError(effect);
    }
  }
}
