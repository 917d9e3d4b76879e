package org.calamus.boot;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Supplier;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.EventSink;

/**
 * Ears that are made on a thread of their own, so that the screen and the keypad work while the
 * model is built or loaded. What they are told meanwhile they do once they are there.
 */
final class LateEars implements Ears {

  private static final Duration CLOSING_LIMIT = Duration.ofSeconds(3);

  private final Supplier<Ears> maker;
  private final Clock clock;
  private Optional<Ears> made = Optional.empty();
  private Optional<Grammar> grammar = Optional.empty();
  private Optional<Thread> thread = Optional.empty();
  private boolean isShut;
  private boolean isClosed;

  /**
   * Ears to come.
   *
   * @param maker makes them; its {@link Halt} says why there are none
   * @param clock the time of day
   */
  LateEars(Supplier<Ears> maker, Clock clock) {
    this.maker = maker;
    this.clock = clock;
  }

  @Override
  public synchronized void start(EventSink sink) {
    Thread making = new Thread(() -> make(sink), "making ears");
    making.setDaemon(true);
    making.start();
    thread = Optional.of(making);
  }

  private void make(EventSink sink) {
    try {
      ready(maker.get(), sink);
    } catch (Halt none) {
      String sentence = String.join(" ", none.getMessage().lines().toList());
      sink.post(new Event.PartDown(clock.now(), Part.EARS, sentence + " The keypad works."));
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
  public void close() {
    Optional<Thread> making;
    Optional<Ears> ears;
    synchronized (this) {
      isClosed = true;
      making = thread;
      ears = made;
    }
    ears.ifPresent(Ears::close);
    if (making.isPresent()) {
      try {
        making.get().join(CLOSING_LIMIT.toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
