package org.calamus.engine;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.Tone;
import org.calamus.core.dialogue.View;
import org.calamus.core.dialogue.Views;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.port.Ears;
import org.calamus.port.EventSink;
import org.calamus.port.Memos;
import org.calamus.port.RecordStore;
import org.calamus.port.Screen;
import org.calamus.port.Voice;
import org.calamus.support.Fenwick;

/** An engine among ports that only write down what they are asked for, in one log. */
final class Stand {

  /** What the store can be made to refuse. */
  enum Trouble {
    JOURNAL,
    SAVE,
    ABANDON,
    READ
  }

  final List<String> log = new ArrayList<>();
  final List<View> views = new ArrayList<>();
  final Set<Trouble> troubles = EnumSet.noneOf(Trouble.class);
  final Engine engine;
  private final Deque<Runnable> turns = new ArrayDeque<>();
  private Event posted = new Event.Ticked(Instant.EPOCH);
  private Runnable onTick = () -> {};
  private Consumer<Event> onEvent = event -> {};
  private Instant now = Instant.parse("2026-03-14T06:30:00Z");

  Stand() {
    this(Fenwick.setup());
  }

  Stand(Setup setup) {
    engine =
        new Engine(
            new Dialogue(setup),
            new Views(setup),
            new Ports(
                new Listening(),
                new Speaking(),
                new Keeping(),
                Stand::place,
                new Showing(),
                () -> now,
                (event, effects, view) -> stepped(event)));
  }

  private static Memos.Place place(String name) {
    return new Memos.Place() {
      @Override
      public Memos.Recording begin() {
        throw new AssertionError("nobody listens");
      }

      @Override
      public String toString() {
        return name;
      }
    };
  }

  /** The next turn comes when the event of the last one has been handled. */
  private void stepped(Event event) {
    if (event instanceof Event.Ticked) {
      log.add("tick");
      onTick.run();
    }
    onEvent.accept(event);
    if (event == posted) {
      nextTurns();
    }
  }

  /** Looks on at every tick. */
  void onTick(Runnable look) {
    onTick = look;
  }

  /** Looks on at every event. */
  void onEvent(Consumer<Event> look) {
    onEvent = look;
  }

  private void nextTurns() {
    Event before = posted;
    while (posted == before && !turns.isEmpty()) {
      turns.remove().run();
    }
    if (posted == before) {
      post(new Event.Stopping(now));
    }
  }

  private void post(Event event) {
    posted = event;
    engine.post(event);
  }

  Stand say(String words) {
    return then(() -> post(new Event.Heard(now, Utterance.of(words), now)));
  }

  Stand key(char c) {
    return then(() -> post(new Event.KeyStruck(now, Key.of(c))));
  }

  Stand key(Key.Name name) {
    return then(() -> post(new Event.KeyStruck(now, Key.of(name))));
  }

  Stand voiceBegan() {
    return then(() -> post(new Event.VoiceBegan(now)));
  }

  /** Needs no turn of its own, since the engine keeps all but the last to itself. */
  Stand voiceEnded() {
    return then(() -> engine.post(new Event.VoiceEnded(now)));
  }

  Stand refuse(Trouble trouble) {
    return then(() -> troubles.add(trouble));
  }

  Stand allow() {
    return then(troubles::clear);
  }

  /** A second passes; the log says where. */
  Stand second() {
    return then(
        () -> {
          now = now.plusSeconds(1);
          post(new Event.LevelMeasured(now, -60, false));
        });
  }

  /** More than the longest phrase passes. */
  Stand minute() {
    return then(
        () -> {
          now = now.plusSeconds(61);
          post(new Event.LevelMeasured(now, -60, false));
        });
  }

  Stand then(Runnable turn) {
    turns.add(turn);
    return this;
  }

  /** Runs the session: the turns one by one, and then its end. */
  State run() throws InterruptedException {
    post(new Event.Started(now, Optional.empty()));
    return engine.run(State.atStart(1, FieldId.BAND, Known.nothing()));
  }

  List<String> logged(String beginning) {
    return log.stream().filter(l -> l.startsWith(beginning)).toList();
  }

  View lastView() {
    return views.get(views.size() - 1);
  }

  private final class Listening implements Ears {
    @Override
    public void start(EventSink sink) {}

    @Override
    public void listenFor(Grammar grammar) {
      log.add("listen " + grammar.name());
    }

    @Override
    public void shut() {
      log.add("shut");
    }

    @Override
    public void open() {
      log.add("open");
    }

    @Override
    public void openAtOnce() {
      log.add("open at once");
    }

    @Override
    public void finishUtterance() {
      log.add("finish");
    }

    @Override
    public void recordMemo(Memos.Place place, Duration longest) {
      log.add("memo " + place + " of " + longest.toSeconds() + " s at most");
    }

    @Override
    public void stopMemo() {
      log.add("stop memo");
    }

    @Override
    public void close() {}
  }

  private final class Speaking implements Voice {
    @Override
    public void start(EventSink sink) {}

    @Override
    public void say(String phrase) {
      log.add("say " + phrase);
    }

    @Override
    public void hush() {
      log.add("hush");
    }

    @Override
    public void sound(Tone tone) {
      log.add("sound " + tone);
    }

    @Override
    public void close() {}
  }

  private final class Showing implements Screen {
    @Override
    public void start(EventSink sink) {}

    @Override
    public void show(View view) {
      views.add(view);
    }

    @Override
    public void close() {}
  }

  private final class Keeping implements RecordStore {
    private final Map<Long, CaptureRecord> kept = new HashMap<>();

    private void refuseIf(Trouble trouble) {
      if (troubles.contains(trouble)) {
        throw new StoreException("The disk is full; make room and go on.");
      }
    }

    @Override
    public long nextRecordId() {
      return 1;
    }

    @Override
    public Optional<CaptureRecord> unfinished() {
      return Optional.empty();
    }

    @Override
    public void journal(CaptureRecord record, FieldId field, Entry entry) {
      refuseIf(Trouble.JOURNAL);
      log.add("journal " + record.id() + " " + field + " " + entry.value().text());
    }

    @Override
    public void journalErased(CaptureRecord record, FieldId field, Instant at) {
      refuseIf(Trouble.JOURNAL);
      log.add("erased " + record.id() + " " + field);
    }

    @Override
    public void save(CaptureRecord record, Instant at) {
      refuseIf(Trouble.SAVE);
      kept.put(record.id(), record);
      log.add("save " + record.id());
    }

    @Override
    public void abandon(CaptureRecord record, Instant at) {
      refuseIf(Trouble.ABANDON);
      log.add("abandon " + record.id());
    }

    @Override
    public Optional<CaptureRecord> asSaved(long id) {
      refuseIf(Trouble.READ);
      log.add("read " + id);
      return Optional.ofNullable(kept.get(id));
    }

    @Override
    public Optional<CaptureRecord> original(long id) {
      return asSaved(id);
    }

    @Override
    public void amend(
        CaptureRecord record, Amendment.Why why, List<CaptureRecord> accounts, Instant at) {
      refuseIf(Trouble.SAVE);
      log.add("amend " + record.id() + " " + why.reason());
    }

    @Override
    public void withdraw(long id, Instant at) {
      refuseIf(Trouble.ABANDON);
      log.add("withdraw " + id);
    }

    @Override
    public void journalNets(List<NetEvent> events) {
      refuseIf(Trouble.JOURNAL);
      events.forEach(e -> log.add("net " + e.net() + " " + e.what()));
    }

    @Override
    public List<NetEvent> netEvents() {
      return List.of();
    }

    @Override
    public List<Amendment> amendments(long id) {
      return List.of();
    }

    @Override
    public List<CaptureRecord> saved() {
      return List.of();
    }

    @Override
    public List<PastCapture> pastCaptures() {
      return List.of();
    }

    @Override
    public void close() {}
  }
}
