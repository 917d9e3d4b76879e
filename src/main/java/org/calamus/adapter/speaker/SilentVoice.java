package org.calamus.adapter.speaker;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Tone;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Voice;

/**
 * Says nothing, for those who want to read only and for demonstrations. Every phrase is answered by
 * its two events, at once or after the time that speaking it would take.
 */
public final class SilentVoice implements Voice {

  private final Clock clock;
  private final Duration perWord;
  private final ScheduledExecutorService timer =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "silent voice");
            thread.setDaemon(true);
            return thread;
          });
  private EventSink sink = event -> {};
  private Optional<Phrase> current = Optional.empty();

  /** A voice that is done at once. */
  public SilentVoice(Clock clock) {
    this(clock, Duration.ZERO);
  }

  /**
   * A voice that takes its time.
   *
   * @param perWord how long a word takes; 0.35 s is a calm speaker's
   */
  public SilentVoice(Clock clock, Duration perWord) {
    this.clock = clock;
    this.perWord = perWord;
  }

  @Override
  public synchronized void start(EventSink sink) {
    this.sink = sink;
    sink.post(new Event.PartUp(clock.now(), Part.VOICE, "silent"));
  }

  @Override
  public synchronized void say(String phrase) {
    hush();
    Phrase said = new Phrase(phrase, clock, sink);
    said.begin();
    if (perWord.isZero() || timer.isShutdown()) {
      said.end();
      return;
    }
    current = Optional.of(said);
    long millis = perWord.toMillis() * phrase.strip().split("\\s+").length;
    timer.schedule(() -> end(said), millis, TimeUnit.MILLISECONDS);
  }

  @Override
  public synchronized void hush() {
    current.ifPresent(this::end);
  }

  private synchronized void end(Phrase phrase) {
    phrase.end();
    if (current.equals(Optional.of(phrase))) {
      current = Optional.empty();
    }
  }

  /** Makes no sound. */
  @Override
  public void sound(Tone tone) {}

  @Override
  public synchronized void close() {
    hush();
    timer.shutdownNow();
  }
}
