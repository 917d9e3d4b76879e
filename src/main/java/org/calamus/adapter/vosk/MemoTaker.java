package org.calamus.adapter.vosk;

import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.core.dialogue.Event;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Memos;
import org.calamus.port.Memos.MemoException;

/**
 * Takes a spoken note down instead of having it recognised. It ends after silence that follows
 * speech, when it is told to, at its longest, or with the sound; every memo asked for is answered
 * by one event. The engine's thread asks and stops; all else belongs to the ears' thread.
 */
final class MemoTaker {

  /** Who thinks what to say pauses longer than between two digits. A design decision. */
  private static final int SILENCE_MILLIS = 1500;

  private static final String NOTHING = "Nothing was heard: say the note again, or type it.";

  private static final Optional<Asked> NONE = Optional.empty();

  private final AtomicReference<Optional<Asked>> asked = new AtomicReference<>(NONE);
  private final SpeechGate gate = new SpeechGate(SILENCE_MILLIS);
  private final Clock clock;
  private final EventSink sink;
  private final int afterStop;
  private Optional<Running> running = Optional.empty();

  /**
   * One that has nothing to do yet.
   *
   * @param clock stamps the events
   * @param sink where they go
   * @param afterStop how much sound still counts after {@link #stop}, since it is on its way
   */
  MemoTaker(Clock clock, EventSink sink, Duration afterStop) {
    this.clock = clock;
    this.sink = sink;
    this.afterStop = samples(afterStop);
  }

  /** Takes the next sound down; one memo at a time. */
  void ask(Memos.Place place, Duration longest) {
    Asked wanted = new Asked(place, samples(longest));
    boolean isFree = asked.compareAndSet(NONE, Optional.of(wanted));
    if (!isFree) {
      sink.post(new Event.MemoFailed(clock.now(), "A note is being recorded: end that one first."));
    }
  }

  /** Ends the memo soon. */
  void stop() {
    asked.get().ifPresent(Asked::stop);
  }

  /** Whether a memo is asked for, so that what is heard goes to it. */
  boolean isOn() {
    return asked.get().isPresent();
  }

  /** Whether somebody speaks the memo now. */
  boolean isHearing() {
    return running.map(r -> r.isSpoken).orElse(false);
  }

  /** Learns how loud the room is, from sound that is for the recogniser. */
  void learn(short[] block) {
    gate.hear(block);
  }

  /** Takes a block down. */
  void hear(short[] block) {
    Optional<Running> now = current();
    if (now.isEmpty()) {
      return;
    }
    try {
      take(now.get(), block);
    } catch (MemoException e) {
      fail(now.get(), e.getMessage());
    }
  }

  /** No sound may be heard just now: ends a memo that was stopped. */
  void pass() {
    current().filter(r -> r.asked.isStopped).ifPresent(this::finish);
  }

  /** No more sound comes: keeps what there is, and answers. */
  void end(String sentence) {
    running.ifPresent(this::finish);
    refuse(sentence);
  }

  /** Answers a memo that was asked for and cannot be taken; may be called from any thread. */
  void refuse(String sentence) {
    if (asked.getAndSet(NONE).isPresent()) {
      sink.post(new Event.MemoFailed(clock.now(), sentence));
    }
  }

  private Optional<Running> current() {
    if (running.isEmpty()) {
      asked.get().ifPresent(this::begin);
    }
    return running;
  }

  private void begin(Asked wanted) {
    gate.restart();
    try {
      running = Optional.of(new Running(wanted, wanted.place.begin()));
    } catch (MemoException e) {
      refuse(e.getMessage());
    }
  }

  private void take(Running now, short[] block) {
    if (now.asked.isStopped && !now.isEnding) {
      now.isEnding = true;
      now.limit = Math.min(now.limit, now.samples + afterStop);
    }
    SpeechGate.Decision decision = gate.hear(block);
    now.isSpoken |= decision != SpeechGate.Decision.QUIET;
    int length = Math.max(0, Math.min(block.length, now.limit - now.samples));
    now.recording.add(length == block.length ? block : Arrays.copyOf(block, length));
    now.samples += length;
    if (decision == SpeechGate.Decision.ENDS || now.samples >= now.limit) {
      finish(now);
    }
  }

  /**
   * What was stopped by hand is kept though no speech was found: who speaks softly knows better.
   */
  private void finish(Running now) {
    boolean isMeant = now.isSpoken || (now.isEnding && now.samples > afterStop);
    if (now.samples == 0 || !isMeant) {
      fail(now, NOTHING);
      return;
    }
    try (Memos.Recording recording = now.recording) {
      String name = recording.keep();
      running = Optional.empty();
      Duration length = Duration.ofMillis(now.samples * 1000L / AudioSource.RATE);
      asked.set(NONE);
      sink.post(new Event.MemoRecorded(clock.now(), name, length));
    } catch (MemoException e) {
      fail(now, e.getMessage());
    }
  }

  private void fail(Running now, String sentence) {
    running = Optional.empty();
    now.recording.close();
    refuse(sentence);
  }

  private static int samples(Duration length) {
    return (int) (length.toMillis() * AudioSource.RATE / 1000);
  }

  /** A memo that was asked for. */
  private static final class Asked {
    private final Memos.Place place;
    private final int longest;
    private volatile boolean isStopped;

    private Asked(Memos.Place place, int longest) {
      this.place = place;
      this.longest = longest;
    }

    private void stop() {
      isStopped = true;
    }
  }

  /** A memo that is being written. */
  private static final class Running {
    private final Asked asked;
    private final Memos.Recording recording;
    private int samples;
    private int limit;
    private boolean isSpoken;
    private boolean isEnding;

    private Running(Asked asked, Memos.Recording recording) {
      this.asked = asked;
      this.recording = recording;
      this.limit = asked.longest;
    }
  }
}
