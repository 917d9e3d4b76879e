package org.calamus.adapter.vosk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.port.AudioSource;
import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.EventSink;
import org.calamus.port.Memos;
import org.calamus.port.TimbreMemory;
import org.calamus.port.UtteranceKeeper;
import org.vosk.Model;

/**
 * Hears the bander with the Vosk recogniser.
 *
 * <p>A thread of its own loads the model, opens the sound and reads it; every native object is
 * made, used and closed there. Until the first {@link #listenFor} only the level is measured. Where
 * the sound cannot be opened or is lost, it is tried again every second until the ears are closed.
 */
public final class VoskEars implements Ears {

  private static final Duration TRY_AGAIN = Duration.ofSeconds(1);
  private static final Duration CLOSING_LIMIT = Duration.ofSeconds(2);
  private static final String NO_SOUND =
      "The microphone gives no sound: type the note, or say it when it is back.";

  private final Path model;
  private final AudioSource source;
  private final Clock clock;
  private final Settings settings;
  private final UtteranceKeeper keeper;
  private final TimbreMemory memory;
  private final Door door = new Door();
  private final AtomicReference<Optional<Grammar>> wanted = new AtomicReference<>(Optional.empty());
  private final AtomicBoolean isFinishAsked = new AtomicBoolean();
  private final Closing closing = new Closing();
  private final Thread thread;
  private final MemoTaker memo;
  private volatile boolean isDeaf;
  private volatile EventSink sink = event -> {};
  private Optional<String> trouble = Optional.empty();

  /**
   * How the ears listen.
   *
   * @param trailingSilence how long it must be quiet for an utterance to have ended; digits said
   *     one by one have pauses of about 0.3 s between them
   * @param tail how much sound is left out after {@link Ears#open}, since the echo of the voice is
   *     still in it
   * @param afterRelease how much sound still counts after {@link Ears#finishUtterance}: what was
   *     said just before is on its way through the sound card
   * @param frameMillis the length of the model's output frames in milliseconds: 10 where its frame
   *     subsampling factor is 1, 30 where it is 3; Vosk prints times as if it were always 3
   * @param isLearning whether the timbre of the voice is learnt
   * @param nativeLog where native errors go instead of on the screen, on Linux and macOS; with it,
   *     the process' standard error goes there for good
   */
  public record Settings(
      Duration trailingSilence,
      Duration tail,
      Duration afterRelease,
      int frameMillis,
      boolean isLearning,
      Optional<Path> nativeLog) {

    /** Checks the times. */
    public Settings {
      Objects.requireNonNull(nativeLog);
      if (trailingSilence.toMillis() < 100 || tail.isNegative() || afterRelease.isNegative()) {
        throw new IllegalArgumentException("trailing silence at least 0.1 s, no negative time");
      }
      if (frameMillis < 1) {
        throw new IllegalArgumentException("frames of at least 1 ms");
      }
    }

    /** For the shipped model and an ordinary headset; native errors are left where they go. */
    public static Settings usual() {
      return new Settings(
          Duration.ofMillis(450),
          Duration.ofMillis(200),
          Duration.ofMillis(150),
          10,
          true,
          Optional.empty());
    }

    /** The same, for a model with output frames of another length, in milliseconds. */
    public Settings framesOf(int millis) {
      return new Settings(trailingSilence, tail, afterRelease, millis, isLearning, nativeLog);
    }

    /** The same, with native errors written to a file. */
    public Settings loggingTo(Path file) {
      return new Settings(
          trailingSilence, tail, afterRelease, frameMillis, isLearning, Optional.of(file));
    }

    /** The same, with the timbre of the voice learnt or not. */
    public Settings learning(boolean isWanted) {
      return new Settings(trailingSilence, tail, afterRelease, frameMillis, isWanted, nativeLog);
    }
  }

  /**
   * Ears that hear a source with a model.
   *
   * @param model the folder of a model that takes grammars at run time
   * @param source the sound; closed with the ears
   * @param clock stamps the events
   * @param settings how to listen
   */
  public VoskEars(Path model, AudioSource source, Clock clock, Settings settings) {
    this(model, source, clock, settings, UtteranceKeeper.none(), TimbreMemory.none());
  }

  /**
   * Ears that also give what they hear to a keeper, which is started and closed by others.
   *
   * @param model as above, as are the others
   * @param keeper gets each utterance before its event is posted
   * @param memory knows the voice from earlier sessions
   */
  public VoskEars(
      Path model,
      AudioSource source,
      Clock clock,
      Settings settings,
      UtteranceKeeper keeper,
      TimbreMemory memory) {
    this.keeper = keeper;
    this.memory = memory;
    this.model = model;
    this.source = source;
    this.clock = clock;
    this.settings = settings;
    this.memo = new MemoTaker(clock, event -> sink.post(event), settings.afterRelease());
    this.thread = new Thread(this::run, "ears");
    this.thread.setDaemon(true);
    // whatever nobody foresaw: deaf ears must not look as if they listened
    this.thread.setUncaughtExceptionHandler(
        (dead, failure) -> {
          down("The recogniser stopped by itself; use the keypad, and start again when you can.");
          Optional.ofNullable(Thread.getDefaultUncaughtExceptionHandler())
              .ifPresent(log -> log.uncaughtException(dead, failure));
        });
  }

  /**
   * Begins to load the native library on a thread of its own, to save the time later. Where there
   * is none for this computer, the ears themselves say so.
   *
   * @param log as in {@link Settings}
   */
  public static void loadAhead(Optional<Path> log) {
    VoskLibrary.loadAhead(log);
  }

  @Override
  public void start(EventSink sink) {
    this.sink = sink;
    thread.start();
  }

  @Override
  public void listenFor(Grammar grammar) {
    wanted.set(Optional.of(grammar));
  }

  @Override
  public void shut() {
    door.shut();
  }

  @Override
  public void open() {
    door.open(settings.tail().toMillis() * AudioSource.RATE / 1000);
  }

  @Override
  public void openAtOnce() {
    door.openAtOnce();
  }

  @Override
  public void finishUtterance() {
    isFinishAsked.set(true);
  }

  @Override
  public void recordMemo(Memos.Place place, Duration longest) {
    memo.ask(place, longest);
    if (isDeaf) {
      memo.refuse(NO_SOUND);
    }
  }

  @Override
  public void stopMemo() {
    memo.stop();
  }

  @Override
  public void close() {
    closing.ask();
    source.close();
    try {
      thread.join(CLOSING_LIMIT.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      hearUntilClosed();
    } finally {
      isDeaf = true;
      memo.end(NO_SOUND);
    }
  }

  private void hearUntilClosed() {
    if (!takesGrammars()) {
      down("The folder " + model + " holds no speech model for grammars; choose another one.");
      return;
    }
    try {
      NativeEnvironment.prepare(settings.nativeLog());
      hear();
    } catch (UnsatisfiedLinkError | NoClassDefFoundError e) {
      down("There is no speech recogniser for this kind of computer; use the keypad.");
    }
  }

  private void hear() {
    try (Model loaded = VoskLibrary.load(model);
        Decoder decoder =
            new Decoder(loaded, ModelFolder.phrasesOf(model), settings.frameMillis())) {
      VoiceLearning learning = new VoiceLearning(expected(), memory);
      listen(new Listening(decoder, door, memo, clock, sink, settings, keeper, learning));
      learning.keep();
    } catch (ModelException e) {
      down(e.getMessage());
    } catch (IOException e) {
      down("The speech model in " + model + " cannot be used; make it anew.");
    }
  }

  private Optional<double[]> expected() {
    return settings.isLearning() ? ModelFolder.expectedBy(model) : Optional.empty();
  }

  /** Without these two files Vosk would ignore every grammar and listen for anything. */
  private boolean takesGrammars() {
    Path graph = model.resolve("graph");
    return graph.resolve("Gr.fst").toFile().isFile() && graph.resolve("HCLr.fst").toFile().isFile();
  }

  private void listen(Listening listening) {
    boolean mayGoOn = true;
    while (mayGoOn && !closing.isAsked()) {
      if (opens()) {
        listening.through(source.name());
        mayGoOn = hearUntilGone(listening);
        listening.end();
      }
      memo.end(NO_SOUND);
      if (mayGoOn) {
        closing.rest(TRY_AGAIN);
      }
    }
    source.close();
  }

  private boolean opens() {
    try {
      source.open();
      up();
      return true;
    } catch (AudioSource.AudioException e) {
      down(e.getMessage());
      return false;
    }
  }

  /** Hears until the source has no more; true where it may have more later. */
  private boolean hearUntilGone(Listening listening) {
    SilenceWatch watch = new SilenceWatch();
    Meter meter = new Meter(clock, sink);
    while (!closing.isAsked()) {
      AudioSource.Read read = source.read();
      if (read instanceof AudioSource.Lost lost) {
        down(lost.sentence());
        return true;
      }
      if (!(read instanceof AudioSource.Block block)) {
        listening.end();
        down(source.name() + " has ended; choose a microphone, or use the keypad.");
        return false;
      }
      if (isFinishAsked.getAndSet(false)) {
        listening.releaseKey();
      }
      listening.hear(block.samples(), wanted.get());
      int peak = Decibels.peak(block.samples());
      meter.hear(block.samples().length, peak, listening.isHearing());
      notice(watch.hear(block.samples().length, peak));
    }
    return false;
  }

  private void notice(SilenceWatch.Change change) {
    if (change == SilenceWatch.Change.FELL_SILENT) {
      down("The microphone is silent; check that it is plugged in and not muted.");
    } else if (change == SilenceWatch.Change.CAME_BACK) {
      up();
    }
  }

  private void up() {
    trouble = Optional.empty();
    sink.post(new Event.PartUp(clock.now(), Part.EARS, source.name()));
  }

  /** Says it once, however often it is tried again. */
  private void down(String sentence) {
    if (!closing.isAsked() && !trouble.equals(Optional.of(sentence))) {
      trouble = Optional.of(sentence);
      sink.post(new Event.PartDown(clock.now(), Part.EARS, sentence));
    }
  }
}
