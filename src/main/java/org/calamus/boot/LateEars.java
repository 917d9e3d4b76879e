package org.calamus.boot;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.EventSink;
import org.calamus.port.Memos;

/**
 * Ears that are made on a thread of their own, begun before the rest of the session is put
 * together, so that the screen and the keypad work while the model is built or loaded. What they
 * are told meanwhile they do once they are there.
 */
final class LateEars implements Ears {

  private static final Duration CLOSING_LIMIT = Duration.ofSeconds(3);

  private final FutureTask<Ears> making;
  private final Clock clock;
  private Optional<Ears> made = Optional.empty();
  private Optional<Grammar> grammar = Optional.empty();
  private Optional<Thread> handing = Optional.empty();
  private EventSink events = event -> {};
  private boolean isShut;
  private boolean isClosed;

  /**
   * Ears to come; their making begins at once.
   *
   * @param maker makes them; its {@link Halt} says why there are none
   * @param clock the time of day
   */
  LateEars(Supplier<Ears> maker, Clock clock) {
    this.clock = clock;
    this.making = new FutureTask<>(maker::get);
    daemon(making, "making ears");
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  @Override
  public synchronized void start(EventSink sink) {
    events = sink;
    handing = Optional.of(daemon(() -> hand(sink), "handing ears"));
  }

  private void hand(EventSink sink) {
    try {
      ready(making.get(), sink);
    } catch (ExecutionException none) {
      String why =
          none.getCause() instanceof Halt halt
              ? String.join(" ", halt.getMessage().lines().toList())
              : "The recogniser cannot be made ready (" + none.getCause() + ").";
      sink.post(new Event.PartDown(clock.now(), Part.EARS, why + " The keypad works."));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized void ready(Ears ears, EventSink sink) {
    if (isClosed) {
      ears.close();
      return;
    }
    made = Optional.of(ears);
    grammar.ifPresent(ears::listenFor);
    if (isShut) {
      ears.shut();
    }
    ears.start(sink);
  }

  @Override
  public synchronized void listenFor(Grammar wanted) {
    grammar = Optional.of(wanted);
    made.ifPresent(ears -> ears.listenFor(wanted));
  }

  @Override
  public synchronized void shut() {
    isShut = true;
    made.ifPresent(Ears::shut);
  }

  @Override
  public synchronized void open() {
    isShut = false;
    made.ifPresent(Ears::open);
  }

  @Override
  public synchronized void openAtOnce() {
    isShut = false;
    made.ifPresent(Ears::openAtOnce);
  }

  @Override
  public synchronized void finishUtterance() {
    made.ifPresent(Ears::finishUtterance);
  }

  @Override
  public synchronized void recordMemo(Memos.Place place, Duration longest) {
    if (made.isPresent()) {
      made.get().recordMemo(place, longest);
    } else {
      // words said now would go nowhere, and the bander would not know
      String sentence = "The microphone is not ready: type the note, or say it in a moment.";
      events.post(new Event.MemoFailed(clock.now(), sentence));
    }
  }

  @Override
  public synchronized void stopMemo() {
    made.ifPresent(Ears::stopMemo);
  }

  @Override
  public void close() {
    Optional<Thread> waiting;
    Optional<Ears> ears;
    synchronized (this) {
      isClosed = true;
      waiting = handing;
      ears = made;
    }
    ears.ifPresent(Ears::close);
    if (waiting.isPresent()) {
      try {
        waiting.get().join(CLOSING_LIMIT.toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
