package org.calamus.benchmark;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;

/**
 * Lets the ears hear one utterance after the other, each with its own grammar, and keeps what they
 * heard of each.
 *
 * <p>The ears' thread asks for sound and gets it at once, so a run gives the same every time; or it
 * gets it at the pace of speech, to measure how long an answer takes.
 */
final class Room implements AudioSource {

  private static final int BLOCK = RATE / 20;
  private static final Duration PATIENCE = Duration.ofMinutes(3);

  private final Supplier<short[]> scene;
  private final List<Grammar> grammars;
  private final List<List<Utterance>> heard = new ArrayList<>();
  private final List<Optional<Answer>> answered = new ArrayList<>();
  private final Pace pace;
  private final CountDownLatch ended = new CountDownLatch(1);
  private VoskEars ears;
  private short[] sound;
  private int at;
  private volatile long samples;
  private boolean isOver;
  private long began;
  private long handedOver;

  private Room(Supplier<short[]> scene, List<Grammar> grammars, Pace pace) {
    this.pace = pace;
    this.scene = scene;
    this.grammars = grammars;
    this.sound = scene.get();
  }

  /**
   * A recording and what is listened for while it is played.
   *
   * @param wav the recording
   * @param grammar what is listened for
   */
  record Play(Path wav, Grammar grammar) {}

  /**
   * What was heard.
   *
   * @param utterances of each piece, what was heard in it
   * @param seconds how long all sound was
   * @param answered of each piece, when its last utterance was heard
   * @param began when the first sound was asked for, as {@link System#nanoTime} gives it
   * @param ended when all was heard
   */
  record Result(
      List<List<Utterance>> utterances,
      double seconds,
      List<Optional<Answer>> answered,
      long began,
      long ended) {

    /** Time to hear over length of sound. */
    double realTimeFactor() {
      return (ended - began) / 1e9 / seconds;
    }
  }

  /**
   * When an utterance was heard.
   *
   * @param samples how much of its piece had been handed over
   * @param sinceSound the time since the last sound was handed over, in nanoseconds
   */
  record Answer(int samples, long sinceSound) {}

  /** How quickly sound is handed over. */
  enum Pace {
    /** As soon as it is asked for. */
    FAST,
    /** Each block when its last sample would have been recorded. */
    REAL
  }

  /**
   * Plays all and waits until it was heard.
   *
   * @param scene gives the room alone first, then a piece for each grammar
   */
  static Result hear(
      Path model,
      VoskEars.Settings settings,
      Supplier<short[]> scene,
      List<Grammar> grammars,
      Pace pace)
      throws InterruptedException {
    Room room = new Room(scene, grammars, pace);
    room.ears = new VoskEars(model, room, Instant::now, settings);
    room.ears.start(room::take);
    room.awaitEnd();
    long ended = System.nanoTime();
    room.ears.close();
    return new Result(room.heard, (double) room.samples / RATE, room.answered, room.began, ended);
  }

  /** Plays recordings as they are, with silence before and behind them. */
  static Result hear(Path model, VoskEars.Settings settings, List<Play> plays)
      throws InterruptedException {
    List<Path> recordings = plays.stream().map(Play::wav).toList();
    Scene scene = new Scene(recordings, Condition.CLEAN, Optional.empty());
    return hear(
        model, settings, scene::next, plays.stream().map(Play::grammar).toList(), Pace.FAST);
  }

  /** Ears that died would ask for no more sound, and nobody would ever say that it is over. */
  private void awaitEnd() throws InterruptedException {
    long before = -1;
    while (!ended.await(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
      if (samples == before) {
        throw new IllegalStateException("the ears stopped after " + samples + " samples");
      }
      before = samples;
    }
  }

  private void take(Event event) {
    if (event instanceof Event.Heard said && !heard.isEmpty()) {
      heard.get(heard.size() - 1).add(said.utterance());
      Answer answer = new Answer(at, System.nanoTime() - handedOver);
      answered.set(answered.size() - 1, Optional.of(answer));
    }
    boolean isDown = event instanceof Event.PartDown down && down.part() == Part.EARS;
    if (isDown && (isOver || samples == 0)) {
      ended.countDown();
    }
  }

  @Override
  public Read read() {
    if (samples == 0) {
      began = System.nanoTime();
    }
    if (at == sound.length) {
      if (heard.size() == grammars.size()) {
        isOver = true;
        return new Ended();
      }
      ears.listenFor(grammars.get(heard.size()));
      heard.add(new ArrayList<>());
      answered.add(Optional.empty());
      sound = scene.get();
      at = 0;
    }
    int end = Math.min(sound.length, at + BLOCK);
    short[] block = Arrays.copyOfRange(sound, at, end);
    samples = samples + block.length;
    at = end;
    if (pace == Pace.REAL) {
      waitUntil(began + samples * 1_000_000_000L / RATE);
    }
    handedOver = System.nanoTime();
    return new Block(block);
  }

  private static void waitUntil(long due) {
    long left = due - System.nanoTime();
    while (left > 0) {
      LockSupport.parkNanos(left);
      left = due - System.nanoTime();
    }
  }

  @Override
  public void open() {
    // a room needs no opening
  }

  @Override
  public String name() {
    return "recordings";
  }

  @Override
  public void close() {
    // nor closing
  }
}
