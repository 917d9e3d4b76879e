package org.calamus.benchmark;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
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
 * <p>The ears' thread asks for sound and gets it at once, so a run gives the same every time.
 */
final class Room implements AudioSource {

  private static final int BLOCK = RATE / 20;

  private final Supplier<short[]> scene;
  private final List<Grammar> grammars;
  private final List<List<Utterance>> heard = new ArrayList<>();
  private final CountDownLatch ended = new CountDownLatch(1);
  private VoskEars ears;
  private short[] sound;
  private int at;
  private long samples;
  private boolean isOver;

  private Room(Supplier<short[]> scene, List<Grammar> grammars) {
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
   */
  record Result(List<List<Utterance>> utterances, double seconds) {}

  /**
   * Plays all and waits until it was heard.
   *
   * @param scene gives the room alone first, then a piece for each grammar
   */
  static Result hear(
      Path model, VoskEars.Settings settings, Supplier<short[]> scene, List<Grammar> grammars)
      throws InterruptedException {
    Room room = new Room(scene, grammars);
    room.ears = new VoskEars(model, room, Instant::now, settings);
    room.ears.start(room::take);
    room.ended.await();
    room.ears.close();
    return new Result(room.heard, (double) room.samples / RATE);
  }

  /** Plays recordings as they are, with silence before and behind them. */
  static Result hear(Path model, VoskEars.Settings settings, List<Play> plays)
      throws InterruptedException {
    List<Path> recordings = plays.stream().map(Play::wav).toList();
    Scene scene = new Scene(recordings, Condition.CLEAN, Optional.empty());
    return hear(model, settings, scene::next, plays.stream().map(Play::grammar).toList());
  }

  private void take(Event event) {
    if (event instanceof Event.Heard said && !heard.isEmpty()) {
      heard.get(heard.size() - 1).add(said.utterance());
    }
    boolean isDown = event instanceof Event.PartDown down && down.part() == Part.EARS;
    if (isDown && (isOver || samples == 0)) {
      ended.countDown();
    }
  }

  @Override
  public Read read() {
    if (at == sound.length) {
      if (heard.size() == grammars.size()) {
        isOver = true;
        return new Ended();
      }
      ears.listenFor(grammars.get(heard.size()));
      heard.add(new ArrayList<>());
      sound = scene.get();
      at = 0;
    }
    int end = Math.min(sound.length, at + BLOCK);
    short[] block = Arrays.copyOfRange(sound, at, end);
    samples += block.length;
    at = end;
    return new Block(block);
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
