package org.calamus.adapter.speaker;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.function.Function;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Tone;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;

/**
 * Plays phrases and tones on a thread of its own. A phrase can be cut off at any moment; it sounds
 * into a tone that came before it, and a tone that comes while it is spoken sounds behind it.
 *
 * <p>A new phrase cuts off the one before. Where there is no speaker, phrases are answered by their
 * events at once, and the speaker is looked for again with the next phrase.
 */
final class Loudspeaker {

  private static final String NO_SPEAKER =
      "No speaker can be opened; read on the screen, or plug in a headset.";
  private static final Duration STEP = Duration.ofMillis(5);

  /** A line that takes nothing for so long is lost; some take 2 s to wake. */
  private static final Duration PATIENCE = Duration.ofSeconds(5);

  /** How much later than written the line may be through: some take 2 s to wake. */
  private static final Duration WAKING = Duration.ofMillis(2_500);

  private static final Duration LINGERING = Duration.ofMillis(400);
  private static final Duration TRY_AGAIN = Duration.ofSeconds(3);

  private final Clock clock;
  private final EventSink sink;
  private final String name;
  private final FreeTtsVoice.Settings settings;
  private final Thread thread;
  private final SpeakerLine line = new SpeakerLine();
  private final Deque<Phrase> waiting = new ArrayDeque<>();
  private final Deque<Tone> tones = new ArrayDeque<>();
  private boolean isCut;
  private volatile boolean isClosing;
  private boolean isKnown;
  private boolean isDown;
  private short[] carried = new short[0];
  private long triedNanos;

  /** Makes the function that turns text to sound; slow, called once on the player's thread. */
  @FunctionalInterface
  interface Loading {
    Function<String, short[]> load();
  }

  Loudspeaker(
      String name, FreeTtsVoice.Settings settings, Loading loading, Clock clock, EventSink sink) {
    this.name = name;
    this.settings = settings;
    this.clock = clock;
    this.sink = sink;
    thread = new Thread(() -> run(loading), "voice");
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** Says a phrase; what is being said or waits is cut off. */
  synchronized void say(Phrase phrase) {
    isCut = true;
    waiting.add(phrase);
    notifyAll();
  }

  /** Cuts off what is being said or waits. */
  synchronized void hush() {
    isCut = true;
    // an empty one in its place, so that those before it are passed over
    waiting.add(new Phrase("", clock, event -> {}));
    notifyAll();
  }

  /** Sounds a tone. */
  synchronized void sound(Tone tone) {
    tones.add(tone);
    notifyAll();
  }

  void close() {
    synchronized (this) {
      isClosing = true;
      notifyAll();
    }
    try {
      thread.join(Duration.ofSeconds(2).toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run(Loading loading) {
    try {
      // the first opening loads the sound system; it also shows whether there is a speaker
      opens();
      line.close();
      Function<String, short[]> synthesizer = loading.load();
      while (!isClosing) {
        Optional<Phrase> phrase = nextPhrase();
        if (phrase.isPresent()) {
          play(phrase.get(), synthesizer);
        } else {
          playTones();
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      endWaiting();
      line.close();
    }
  }

  /** Waits for a phrase; the newest counts, the others are over. Empty where only a tone waits. */
  private synchronized Optional<Phrase> nextPhrase() throws InterruptedException {
    while (waiting.isEmpty() && tones.isEmpty() && carried.length == 0 && !isClosing) {
      wait();
    }
    isCut = false;
    while (waiting.size() > 1) {
      waiting.remove().end();
    }
    return Optional.ofNullable(waiting.poll());
  }

  private synchronized void endWaiting() {
    waiting.forEach(Phrase::end);
    waiting.clear();
  }

  private void play(Phrase phrase, Function<String, short[]> synthesizer)
      throws InterruptedException {
    if (!phrase.text().isBlank() && opens()) {
      Mix mix = new Mix(synthesizer.apply(phrase.text()));
      mix.add(takeCarried());
      boolean isWhole = isHeard(mix, phrase::begin);
      phrase.end();
      if (isWhole) {
        linger();
      }
      line.close();
    }
    phrase.end();
  }

  private void playTones() throws InterruptedException {
    Mix mix = new Mix(takeCarried());
    if (!opens()) {
      dropTones();
    } else if (isHeard(mix, () -> {})) {
      linger();
    } else {
      // a phrase that comes does not cut a tone off: it sounds on into it
      carried = mix.last(line.left().toMillis() * KevinSynthesizer.RATE / 1000);
    }
    line.close();
  }

  /** Leaves the line open a little: its last sound may still be on its way through a server. */
  private synchronized void linger() throws InterruptedException {
    long deadline = System.nanoTime() + LINGERING.toNanos();
    long left = LINGERING.toMillis();
    while (left > 0 && waiting.isEmpty() && tones.isEmpty() && !isClosing) {
      wait(left);
      left = Duration.ofNanos(deadline - System.nanoTime()).toMillis();
    }
  }

  private synchronized void dropTones() {
    tones.clear();
  }

  private short[] takeCarried() {
    short[] taken = carried;
    carried = new short[0];
    return taken;
  }

  /** Plays all of it; false where it was cut off. */
  private boolean isHeard(Mix mix, Runnable began) throws InterruptedException {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (!isClosing && line.isOpen() && mayGoOn(mix)) {
      if (mix.isOver()) {
        return isQueueHeard(mix);
      }
      if (!line.hasRoom() && System.nanoTime() < deadline) {
        pause();
      } else if (line.hasRoom() && line.write(mix.next(SpeakerLine.CHUNK, settings.volume()))) {
        began.run();
        deadline = System.nanoTime() + PATIENCE.toNanos();
      } else {
        lose();
      }
    }
    return false;
  }

  /** Adds tones that came meanwhile; false where the phrase was cut off. */
  private synchronized boolean mayGoOn(Mix mix) {
    while (!tones.isEmpty()) {
      mix.add(Tones.samples(tones.remove(), settings.toneVolume()));
    }
    return !isCut;
  }

  /** Waits until what was written is heard; false where it was cut off. */
  private boolean isQueueHeard(Mix mix) throws InterruptedException {
    Duration left = line.left();
    long deadline = System.nanoTime() + left.toNanos() + WAKING.toNanos();
    while (isMore(left) && System.nanoTime() < deadline) {
      if (isClosing || !mayGoOn(mix)) {
        return false;
      }
      if (!mix.isOver()) {
        return isHeard(mix, () -> {});
      }
      line.pad();
      pause();
      left = line.left();
    }
    return true;
  }

  private static boolean isMore(Duration left) {
    return !left.isNegative() && !left.isZero();
  }

  private synchronized void pause() throws InterruptedException {
    if (!isCut && !isClosing) {
      wait(STEP.toMillis());
    }
  }

  /** Opens the line; one that could not be opened is not tried again with every word. */
  private boolean opens() {
    boolean isSoon = isDown && System.nanoTime() - triedNanos < TRY_AGAIN.toNanos();
    if (isSoon || !line.opens()) {
      down();
      return false;
    }
    up();
    return true;
  }

  private void up() {
    if (isDown || !isKnown) {
      sink.post(new Event.PartUp(clock.now(), Part.VOICE, name));
    }
    isDown = false;
    isKnown = true;
  }

  private void lose() {
    line.close();
    down();
  }

  /** Says it once, however often it is tried again. */
  private void down() {
    if (!isDown && !isClosing) {
      isDown = true;
      isKnown = true;
      triedNanos = System.nanoTime();
      sink.post(new Event.PartDown(clock.now(), Part.VOICE, NO_SPEAKER));
    }
  }
}
