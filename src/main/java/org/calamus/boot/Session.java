package org.calamus.boot;

import java.lang.Thread.UncaughtExceptionHandler;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.View;
import org.calamus.core.dialogue.Views;
import org.calamus.core.effort.NetLog;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.Known;
import org.calamus.engine.Engine;
import org.calamus.engine.Ports;
import org.calamus.port.Ears;
import org.calamus.port.Instruments;
import org.calamus.port.Screen;
import org.calamus.port.UtteranceKeeper;
import org.calamus.port.Voice;

/**
 * Runs a session over ports that are ready: starts them in order, loops, and closes them whatever
 * happens. The store belongs to the caller, who closes it last.
 */
final class Session {

  private static final long CLOSING_SECONDS = 3;

  private final Setup setup;
  private final Ports ports;
  private final Instruments instruments;
  private final Engine engine;
  private final AtomicReference<Optional<Throwable>> unforeseen =
      new AtomicReference<>(Optional.empty());

  Session(Setup setup, Ports ports, Instruments instruments) {
    this.setup = setup;
    this.ports = ports;
    this.instruments = instruments;
    this.engine = new Engine(new Dialogue(setup), new Views(setup), ports);
  }

  /** Ends the session from another thread. */
  void stop() {
    engine.post(new Event.Stopping(ports.clock().now()));
  }

  /**
   * Runs until the session ends, also by a signal.
   *
   * @throws IllegalStateException where anything failed that nobody foresaw, on whatever thread;
   *     all parts are closed then
   */
  void run() throws InterruptedException {
    CountDownLatch closed = new CountDownLatch(1);
    Thread hook = new Thread(() -> stop(closed), "stopping");
    Runtime.getRuntime().addShutdownHook(hook);
    UncaughtExceptionHandler usual = Thread.getDefaultUncaughtExceptionHandler();
    Thread.setDefaultUncaughtExceptionHandler((thread, failure) -> stopFor(failure));
    try {
      // first of all what the store holds: a key struck early must find an unfinished bird
      engine.post(new Event.PartUp(ports.clock().now(), Part.STORE, "calamus.db"));
      engine.post(started());
      ports.screen().start(engine);
      start();
      StartingMemory.giveBackLater();
      requireStored(engine.run(atStart(ports.store().pastCaptures())));
      requireForeseen();
    } catch (Error e) {
      // the last guard: an error ends the session as an exception does, with a sentence and a code
      throw new IllegalStateException(e);
    } finally {
      Thread.setDefaultUncaughtExceptionHandler(usual);
      close();
      closed.countDown();
      removeHook(hook);
    }
  }

  /** A part whose thread died would be deaf or dumb and look alive: the session ends instead. */
  private void stopFor(Throwable failure) {
    unforeseen.compareAndSet(Optional.empty(), Optional.of(failure));
    stop();
  }

  private void requireForeseen() {
    unforeseen
        .get()
        .ifPresent(
            failure -> {
              throw new IllegalStateException(failure);
            });
  }

  private void start() {
    ports.keeper().start(engine);
    ports.voice().start(engine);
    ports.ears().start(engine);
    instruments.start(engine);
  }

  /** The engine has tried once more to store what the disk would not take; now it would be lost. */
  private void requireStored(State end) {
    for (View.Health part : new Views(setup).of(end).health()) {
      if (part.part() == Part.STORE && part.isDown()) {
        throw new Halt(
            ExitCode.FAILURE,
            "The last values could not be stored: write them down now. "
                + part.sentence()
                + inHand(end),
            null);
      }
    }
  }

  /** The values of the bird in the hand, which the screen no longer shows; empty without one. */
  private String inHand(State end) {
    return end.record()
        .map(r -> setup.phrases().filled(r))
        .filter(values -> !values.isEmpty())
        .map(values -> System.lineSeparator() + "In the hand: " + values + ".")
        .orElse("");
  }

  private Event started() {
    Optional<CaptureRecord> unfinished = ports.store().unfinished();
    Optional<CaptureRecord> saved = unfinished.flatMap(r -> ports.store().asSaved(r.id()));
    return new Event.Started(ports.clock().now(), unfinished, saved);
  }

  private State atStart(List<PastCapture> saved) {
    return State.atStart(
        ports.store().nextRecordId(),
        setup.form().first(),
        Known.of(setup.rules().policy().strings(), saved, setup.rules().policy().zone()),
        NetLog.of(ports.store().netEvents()));
  }

  /** Closes each part whatever becomes of the others, the ears first and the screen last. */
  private void close() {
    Screen screen = ports.screen();
    Voice voice = ports.voice();
    UtteranceKeeper keeper = ports.keeper();
    Ears ears = ports.ears();
    try (screen;
        instruments;
        voice;
        keeper;
        ears) {
      return;
    }
  }

  /** A signal asks the process to end: lets the loop finish what it is doing and close. */
  private void stop(CountDownLatch closed) {
    stop();
    try {
      closed.await(CLOSING_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void removeHook(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException alreadyStopping) {
      return; // the hook itself asked for this end
    }
  }
}
