package org.calamus.benchmark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.calamus.core.speech.Word;

/** The program's own ears and the peer: the same speech for both. */
final class Listeners {

  private final Hearing ours;
  private final Judge judge;
  private double peerSeconds;
  private double peerSoundSeconds;
  private double peerMegabytes;

  /** Listeners of whom the peer may be given for each hearing. */
  Listeners(Hearing ours, Judge judge) {
    this.ours = ours;
    this.judge = judge;
  }

  /** Lets speakers say something in one condition, heard by our ears; two rooms at a time. */
  List<Trial> hear(Condition condition, List<List<Turn>> rooms)
      throws IOException, InterruptedException {
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      List<Future<List<Trial>>> futures = new ArrayList<>();
      rooms.forEach(turns -> futures.add(two.submit(() -> ours.hear(condition, turns))));
      List<Trial> trials = new ArrayList<>();
      for (Future<List<Trial>> future : futures) {
        trials.addAll(future.get());
      }
      return trials;
    } catch (ExecutionException e) {
      throw new IOException("a speaker could not be heard", e);
    } finally {
      two.shutdown();
    }
  }

  /** The same trials, heard by the peer as well. */
  List<Trial> hear(Peer peer, PeerSettings settings, double doubt, List<Trial> trials)
      throws IOException, InterruptedException {
    List<String> names = new ArrayList<>();
    List<Peer.Sound> sounds = new ArrayList<>();
    Names soundNames = new Names();
    for (Trial trial : trials) {
      names.add(soundNames.next(trial.speaker(), trial.condition()));
      sounds.add(new Peer.Sound(names.get(names.size() - 1), judge.grammar(trial.said())));
      peerSoundSeconds += trial.seconds() + 2.0 * Scene.BEFORE / org.calamus.port.AudioSource.RATE;
    }
    Peer.Result result = peer.hear(sounds, settings, doubt);
    peerSeconds += result.seconds();
    peerMegabytes = Math.max(peerMegabytes, result.megabytes());
    List<Trial> both = new ArrayList<>();
    for (int i = 0; i < trials.size(); i++) {
      Trial trial = trials.get(i);
      List<Word> words = result.words().getOrDefault(names.get(i), List.of());
      both.add(trial.with(PeerOutcome.of(trial.said(), words, judge)));
    }
    return both;
  }

  /** The names of the sounds that the peer gets, in the order in which each speaker speaks. */
  static final class Names {

    private final Map<String, Integer> counts = new HashMap<>();

    /** The name of the next sound of a speaker in a condition. */
    String next(Speaker speaker, Condition condition) {
      String begin = (speaker.name() + "-" + condition.name() + "-").replace(' ', '-');
      return begin + (counts.merge(begin, 1, Integer::sum) - 1);
    }
  }

  /** The peer's time over the length of what it heard, the loading of its model included. */
  double peerRealTimeFactor() {
    return peerSoundSeconds == 0 ? 0 : peerSeconds / peerSoundSeconds;
  }

  /** The most memory that a process of the peer took, in megabytes. */
  double peerMegabytes() {
    return peerMegabytes;
  }
}
