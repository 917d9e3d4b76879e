package org.calamus.benchmark;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;

/**
 * Lets the ears hear recordings one after the other, each with its own grammar and with silence
 * before and behind it, and keeps what they heard of each.
 *
 * <p>The ears' thread asks for sound and gets it at once, so a run gives the same every time.
 */
final class Room implements AudioSource {

  private static final int BLOCK = RATE / 20;
  private static final int SILENCE = RATE / 2;

  /**
   * A recording and what is listened for while it is played.
   *
   * @param wav the recording
   * @param grammar what is listened for
   */
  record Play(Path wav, Grammar grammar) {}

  private final List<Play> plays;
  private final List<List<Utterance>> heard = new ArrayList<>();
  private final CountDownLatch ended = new CountDownLatch(1);
  private VoskEars ears;
  private short[] sound = {};
  private int at;
  private long samples;

  private Room(List<Play> plays) {
    this.plays = plays;
  }

  /**
   * What was heard.
   *
   * @param utterances of each recording, what was heard in it
   * @param seconds how long all sound was
   */
  record Result(List<List<Utterance>> utterances, double seconds) {}

  /** Plays all and waits until they were heard. */
  static Result hear(Path model, VoskEars.Settings settings, List<Play> plays)
      throws InterruptedException {
    Room room = new Room(plays);
    room.ears = new VoskEars(model, room, Instant::now, settings);
    room.ears.start(room::take);
    room.ended.await();
    room.ears.close();
    return new Result(room.heard, (double) room.samples / RATE);
  }

  private void take(Event event) {
    if (event instanceof Event.Heard said) {
      heard.get(heard.size() - 1).add(said.utterance());
    }
    if (event instanceof Event.PartDown down && down.part() == Part.EARS) {
      ended.countDown();
    }
  }

  @Override
  public Read read() {
    if (at == sound.length) {
      if (heard.size() == plays.size()) {
        return new Ended();
      }
      Play next = plays.get(heard.size());
      heard.add(new ArrayList<>());
      ears.listenFor(next.grammar());
      sound = sound(next.wav());
      at = 0;
      samples += sound.length;
    }
    int end = Math.min(sound.length, at + BLOCK);
    short[] block = Arrays.copyOfRange(sound, at, end);
    at = end;
    return new Block(block);
  }

  private static short[] sound(Path wav) {
    short[] all = new short[SILENCE];
    try (WavSource source = new WavSource(wav, WavSource.Pace.FAST)) {
      source.open();
      Read read = source.read();
      while (read instanceof Block block) {
        int before = all.length;
        all = Arrays.copyOf(all, before + block.samples().length);
        System.arraycopy(block.samples(), 0, all, before, block.samples().length);
        read = source.read();
      }
    }
    return Arrays.copyOf(all, all.length + 2 * SILENCE);
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
