package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;

/** Lets the program's own ears hear speakers, and gives what was heard to the dialogue. */
final class Hearing {

  private final Path model;
  private final Path audio;
  private final Half half;
  private final Optional<double[]> babble;
  private final Judge judge;
  private final Optional<Peer> peer;

  /**
   * Hearing with a model.
   *
   * @param model its folder
   * @param audio where recordings are kept
   * @param half noises are drawn from other seeds in each
   * @param babble the track of babble; empty where no condition has any
   * @param judge says what came of it
   * @param peer gets the same sound; empty where it does not listen
   */
  Hearing(
      Path model,
      Path audio,
      Half half,
      Optional<double[]> babble,
      Judge judge,
      Optional<Peer> peer) {
    this.model = model;
    this.audio = audio;
    this.half = half;
    this.babble = babble;
    this.judge = judge;
    this.peer = peer;
  }

  /** Lets the speakers in one room say all of it in one condition, heard by the same ears. */
  List<Trial> hear(Condition condition, List<Turn> turns) throws IOException, InterruptedException {
    List<Path> recordings = new ArrayList<>();
    Listeners.Names names = new Listeners.Names();
    List<String> sounds = new ArrayList<>();
    for (Turn turn : turns) {
      recordings.add(turn.speaker().recording(turn.said(), audio));
      sounds.add(names.next(turn.speaker(), condition));
    }
    Scene scene = new Scene(recordings, condition, noise(turns.get(0).speaker(), condition));
    List<Grammar> asked = turns.stream().map(t -> judge.grammar(t.said())).toList();
    Room.Result result =
        Room.hear(model, VoskEars.Settings.usual(), copied(sounds, scene), asked, Room.Pace.FAST);
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < turns.size(); i++) {
      Said said = turns.get(i).said();
      List<Utterance> heard = result.utterances().get(i);
      double seconds = (double) Recordings.read(recordings.get(i)).length / AudioSource.RATE;
      Outcome ours = Outcome.of(heard, judge.of(said, heard));
      Speaker speaker = turns.get(i).speaker();
      trials.add(new Trial(speaker, condition, said, seconds, ours, Optional.empty()));
    }
    return trials;
  }

  /** The scene, of which the peer gets a copy, piece by piece. */
  private Supplier<short[]> copied(List<String> names, Scene scene) {
    int[] index = {-1};
    return () -> {
      short[] piece = scene.next();
      int current = index[0]++;
      if (current >= 0) {
        peer.ifPresent(p -> p.keep(names.get(current), cut(piece)));
      }
      return piece;
    };
  }

  /** As much of the room behind the utterance as before it. */
  private static short[] cut(short[] piece) {
    return Arrays.copyOf(piece, piece.length - (Scene.BEHIND - Scene.BEFORE));
  }

  private Optional<Noise> noise(Speaker speaker, Condition condition) {
    long seed = (half + speaker.name() + condition.name()).hashCode();
    return condition
        .noise()
        .map(
            kind ->
                switch (kind) {
                  case WHITE -> Noise.white(seed);
                  case PINK -> Noise.pink(seed);
                  case BABBLE -> Noise.loop(babble.orElseThrow(), seed);
                });
  }
}
