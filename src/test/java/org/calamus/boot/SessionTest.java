package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.calamus.adapter.files.MemoFiles;
import org.calamus.adapter.scripted.DeafEars;
import org.calamus.adapter.sqlite.SqliteRecordStore;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.Tone;
import org.calamus.core.dialogue.View;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.engine.Ports;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Instruments;
import org.calamus.port.RecordStore;
import org.calamus.port.Screen;
import org.calamus.port.UtteranceKeeper;
import org.calamus.port.Voice;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What is left when a session ends in a way that nobody foresaw. */
@Timeout(30)
class SessionTest {

  private static final Clock CLOCK = () -> Instant.parse("2026-03-14T06:30:00Z");

  @TempDir Path data;

  private final List<String> closed = new ArrayList<>();
  private Optional<RecordStore> opened = Optional.empty();

  @AfterEach
  void closeTheStore() {
    opened.ifPresent(RecordStore::close);
  }

  /** Runs a session of which the keys of a band are the start, and the given happening the end. */
  private void run(Consumer<EventSink> happening, Voice voice) throws InterruptedException {
    run(happening, voice, UtteranceKeeper.none());
  }

  private void run(Consumer<EventSink> happening, Voice voice, UtteranceKeeper keeper)
      throws InterruptedException {
    run(happening, voice, keeper, store());
  }

  private RecordStore store() {
    RecordStore store = new SqliteRecordStore(data, data.resolve("natives"));
    opened = Optional.of(store);
    return store;
  }

  private void run(
      Consumer<EventSink> happening, Voice voice, UtteranceKeeper keeper, RecordStore store)
      throws InterruptedException {
    Ports ports =
        new Ports(
            new DeafEars(CLOCK, "Not listening."),
            voice,
            store,
            new MemoFiles(data),
            new Shown(happening),
            CLOCK,
            (event, effects, view) -> {},
            keeper);
    new Session(Fenwick.setup(), ports, new Nothing()).run();
  }

  private static void band(EventSink sink) {
    for (char digit : "284155601".toCharArray()) {
      sink.post(new Event.KeyStruck(CLOCK.now(), Key.of(digit)));
    }
    sink.post(new Event.KeyStruck(CLOCK.now(), Key.of(Key.Name.ENTER)));
  }

  @Test
  void runEndsWhenTheThreadOfAPartDies() {
    IllegalArgumentException unforeseen = new IllegalArgumentException("nobody foresaw this");
    Consumer<EventSink> dies =
        sink -> {
          band(sink);
          new Thread(
                  () -> {
                    throw unforeseen;
                  })
              .start();
        };
    assertThatThrownBy(() -> run(dies, new Said(phrase -> {})))
        .isInstanceOf(IllegalStateException.class)
        .hasRootCause(unforeseen);
    isIntact();
  }

  @Test
  void runEndsWithAnExceptionWhenTheLoopEndsWithAnError() {
    AssertionError unforeseen = new AssertionError("nobody foresaw this");
    Consumer<String> fails =
        phrase -> {
          if (phrase.endsWith("species")) {
            throw unforeseen;
          }
        };
    assertThatThrownBy(() -> run(SessionTest::band, new Said(fails)))
        .isInstanceOf(IllegalStateException.class)
        .hasRootCause(unforeseen);
    isIntact();
  }

  /** "Write them down now" was said when the screen that had shown them was gone. */
  @Test
  void runSaysTheValuesThatCouldNotBeStored() {
    RecordStore store = store();
    InvocationHandler full =
        (proxy, method, arguments) -> {
          if (method.getName().equals("journal")) {
            throw new RecordStore.StoreException("Record 1, band, is not stored: the disk is full");
          }
          return method.invoke(store, arguments);
        };
    RecordStore onFullDisk =
        (RecordStore)
            Proxy.newProxyInstance(
                RecordStore.class.getClassLoader(), new Class<?>[] {RecordStore.class}, full);
    Consumer<EventSink> strikesAndEnds =
        sink -> {
          band(sink);
          sink.post(new Event.Stopping(CLOCK.now()));
        };
    Voice silent = new Said(phrase -> {});
    assertThatThrownBy(() -> run(strikesAndEnds, silent, UtteranceKeeper.none(), onFullDisk))
        .isInstanceOf(Halt.class)
        .hasMessageContainingAll("write them down now", "In the hand: band 2841-55601");
  }

  @Test
  void runClosesTheScreenThoughAnotherPartFailsToClose() {
    Voice stuck =
        new Said(phrase -> {}) {
          @Override
          public void close() {
            throw new IllegalArgumentException("does not close");
          }
        };
    assertThatThrownBy(() -> run(sink -> sink.post(new Event.Stopping(CLOCK.now())), stuck))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(closed).containsExactly("instruments", "screen");
  }

  @Test
  void runTellsTheKeeperWhatBecameOfAnUtterance() throws InterruptedException {
    Event.Heard heard =
        new Event.Heard(
            CLOCK.now(), Utterance.of("two eight four one five five six zero one"), CLOCK.now());
    Remembering keeper = new Remembering();
    Consumer<EventSink> speaks =
        sink -> {
          sink.post(heard);
          sink.post(new Event.Stopping(CLOCK.now()));
        };
    run(speaks, new Said(phrase -> {}), keeper);
    assertThat(keeper.event).containsSame(heard);
    assertThat(keeper.account.orElseThrow().outcome().taken()).containsExactly("BAND=2841-55601");
    assertThat(closed).containsExactly("keeper", "voice", "instruments", "screen");
  }

  private final class Remembering implements UtteranceKeeper {
    private Optional<Event.Heard> event = Optional.empty();
    private Optional<Account> account = Optional.empty();

    @Override
    public void start(EventSink sink) {}

    @Override
    public void heard(Event.Heard heard, Grammar grammar, short[] sound) {}

    @Override
    public void became(Event.Heard heard, Supplier<Account> told) {
      event = Optional.of(heard);
      account = Optional.of(told.get());
    }

    @Override
    public void close() {
      closed.add("keeper");
    }
  }

  private void isIntact() {
    assertThat(closed).containsExactly("voice", "instruments", "screen");
    assertThat(opened.orElseThrow().unfinished().flatMap(CaptureRecord::band))
        .hasValueSatisfying(band -> assertThat(band.text()).isEqualTo("2841-55601"));
  }

  private final class Shown implements Screen {
    private final Consumer<EventSink> happening;

    Shown(Consumer<EventSink> happening) {
      this.happening = happening;
    }

    @Override
    public void start(EventSink sink) {
      happening.accept(sink);
    }

    @Override
    public void show(View view) {}

    @Override
    public void close() {
      closed.add("screen");
    }
  }

  private class Said implements Voice {
    private final Consumer<String> heard;

    Said(Consumer<String> heard) {
      this.heard = heard;
    }

    @Override
    public void start(EventSink sink) {}

    @Override
    public void say(String phrase) {
      heard.accept(phrase);
    }

    @Override
    public void hush() {}

    @Override
    public void sound(Tone tone) {}

    @Override
    public void close() {
      closed.add("voice");
    }
  }

  private final class Nothing implements Instruments {
    @Override
    public void start(EventSink sink) {}

    @Override
    public void close() {
      closed.add("instruments");
    }
  }
}
