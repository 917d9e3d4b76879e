package org.calamus.boot;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.scripted.PlayedInstruments;
import org.calamus.adapter.scripted.QueuedAudio;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.View;
import org.calamus.port.SessionWatcher;

/**
 * Plays the bander of the demonstration: waits until the console is silent, then says or weighs
 * what the script has next. Hears nothing but what the console shows any watcher.
 */
final class DemoPerson implements SessionWatcher {

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final DemoScript script;
  private final QueuedAudio room;
  private final PlayedInstruments scale;
  private final WavSource.Pace pace;
  private final Lock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private final List<Duration> answerTimes = new ArrayList<>();
  private boolean hears;
  private int phrases;
  private int heard;
  private int settled;
  private boolean isSaving;
  private Optional<Instant> speechEnded = Optional.empty();

  DemoPerson(DemoScript script, QueuedAudio room, PlayedInstruments scale, WavSource.Pace pace) {
    this.script = script;
    this.room = room;
    this.scale = scale;
    this.pace = pace;
  }

  @Override
  public void stepped(Event event, List<Effect> effects, View view) {
    lock.lock();
    try {
      note(event);
      for (Effect effect : effects) {
        if (effect instanceof Effect.Say) {
          phrases++;
        }
        if (effect instanceof Effect.SaveRecord) {
          isSaving = true;
        }
        if (effect instanceof Effect.JournalValue value && event instanceof Event.ReadingArrived) {
          settled++;
        }
      }
      hears = view.health().stream().anyMatch(h -> h.part() == Part.EARS && h.isUp());
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  private void note(Event event) {
    if (event instanceof Event.Heard utterance) {
      heard++;
      speechEnded = Optional.of(utterance.speechEndedAt());
    } else if (event instanceof Event.VoiceBegan began) {
      speechEnded.ifPresent(end -> answerTimes.add(Duration.between(end, began.at())));
      speechEnded = Optional.empty();
    } else if (event instanceof Event.VoiceEnded) {
      phrases = 0;
    } else if (event instanceof Event.Saved || event instanceof Event.StoreFailed) {
      isSaving = false;
    }
  }

  /** Whether all is said; what is said after saving comes only when the store has answered. */
  private boolean isQuiet() {
    return phrases == 0 && !isSaving;
  }

  /**
   * Plays the whole script.
   *
   * @return empty where all went as planned; else one sentence
   */
  Optional<String> play() throws InterruptedException {
    if (!await(() -> hears)) {
      return Optional.of("The recogniser did not start; run the check command.");
    }
    for (DemoScript.Step step : script.steps()) {
      if (!await(this::isQuiet)) {
        return Optional.of("The console did not fall silent before " + step.file() + ".");
      }
      if (!perform(step)) {
        return Optional.of("The console did not take " + step.file() + ".");
      }
    }
    await(this::isQuiet);
    return Optional.empty();
  }

  private boolean perform(DemoScript.Step step) throws InterruptedException {
    byte[] bytes = DemoScript.bytes(step.file());
    if (step.kind() == DemoScript.Kind.SAY) {
      int before = heard;
      room.play(new WavSource(step.file(), bytes, pace));
      return await(() -> heard > before);
    }
    int before = settled;
    List<String> lines = new String(bytes, StandardCharsets.UTF_8).lines().toList();
    scale.play(PlayedInstruments.Recording.parse(step.file(), lines));
    return await(() -> settled > before);
  }

  private boolean await(java.util.function.BooleanSupplier condition) throws InterruptedException {
    lock.lock();
    try {
      long left = PATIENCE.toNanos();
      while (!condition.getAsBoolean()) {
        if (left <= 0) {
          return false;
        }
        left = changed.awaitNanos(left);
      }
      return true;
    } finally {
      lock.unlock();
    }
  }

  /** The times from the end of speech to the start of the readback, shortest first. */
  List<Duration> answerTimes() {
    lock.lock();
    try {
      return answerTimes.stream().sorted().toList();
    } finally {
      lock.unlock();
    }
  }
}
