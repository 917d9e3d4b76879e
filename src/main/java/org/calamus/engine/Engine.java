package org.calamus.engine;

import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.Step;
import org.calamus.core.dialogue.Views;
import org.calamus.port.EventSink;
import org.calamus.port.RecordStore.StoreException;

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

  private final BlockingQueue<Event> queue = new LinkedBlockingQueue<>();
  private final Dialogue dialogue;
  private final Views views;
  private final Ports ports;
  private final Keeper keeper;
  private int phrasesSpoken;
  private boolean isHushed;
  private boolean hasEnded;

  /** An engine for one session. */
  public Engine(Dialogue dialogue, Views views, Ports ports) {
    this.dialogue = dialogue;
    this.views = views;
    this.ports = ports;
    this.keeper = new Keeper(ports.store(), ports.clock(), this);
  }

  @Override
  public void post(Event event) {
    queue.add(event);
  }

  /**
   * Runs the session until it ends.
   *
   * @param start the state to begin with
   * @return the state at the end
   * @throws InterruptedException where the thread is interrupted; everything taken is safe then
   */
  public State run(State start) throws InterruptedException {
    State state = start;
    while (!hasEnded) {
      Event event = queue.poll(TICK_MILLIS, TimeUnit.MILLISECONDS);
      state = handle(state, event == null ? new Event.Ticked(ports.clock().now()) : event);
    }
    return state;
  }

  private State handle(State state, Event event) {
    if (event instanceof Event.VoiceEnded && !isLastPhrase()) {
      return state;
    }
    if (event instanceof Event.Ticked) {
      keeper.catchUp();
    }
    Step step = dialogue.step(state, event);
    perform(step.effects());
    var view = views.of(step.state());
    ports.screen().show(view);
    ports.watcher().stepped(event, step.effects(), view);
    return step.state();
  }

  /** Counts the phrases that have ended; the ears open again only after the last. */
  private boolean isLastPhrase() {
    phrasesSpoken = Math.max(0, phrasesSpoken - 1);
    if (phrasesSpoken > 0) {
      return false;
    }
    if (!isHushed) {
      ports.ears().open();
    }
    isHushed = false;
    return true;
  }

  private void perform(List<Effect> effects) {
    for (Effect effect : effects) {
      try {
        perform(effect);
      } catch (StoreException e) {
        keeper.failed(effect, e.getMessage());
        return;
      }
    }
  }

  private void perform(Effect effect) {
    if (Keeper.isForStore(effect)) {
      keeper.keep(effect);
    } else if (effect instanceof Effect.Say say) {
      phrasesSpoken++;
      isHushed = false;
      ports.ears().shut();
      ports.voice().say(say.phrase());
    } else if (effect instanceof Effect.Hush) {
      isHushed = true;
      ports.voice().hush();
      ports.ears().openAtOnce();
    } else if (effect instanceof Effect.Sound sound) {
      ports.voice().sound(sound.tone());
    } else if (effect instanceof Effect.ListenFor listen) {
      ports.ears().listenFor(listen.grammar());
    } else if (effect instanceof Effect.FinishUtterance) {
      ports.ears().finishUtterance();
    } else if (effect instanceof Effect.EndSession) {
      hasEnded = true;
    } else {
      throw new AssertionError(effect);
    }
  }
}
