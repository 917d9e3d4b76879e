package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Looks for the settings with which the peer hears best on the tuning half: one setting after the
 * other, each at the best of those before it, the language weight a second time at the end.
 *
 * <p>Best is who hears the most whole utterances rightly, of those settings that take no more of
 * what is not for the console than the program's own ears do; where none is so strict, of those
 * that take the least. Equals are parted by the values asked for again.
 */
final class Sweep {

  /** Hears trials with the peer, in a way that is tried. */
  interface Listener<T> {
    /** The same trials with what the peer heard. */
    List<Trial> hear(T way) throws IOException, InterruptedException;
  }

  private final Listener<PeerSettings> peer;
  private final int allowed;
  private final PrintStream out;
  private Score best;

  /**
   * How well settings do.
   *
   * @param settings the settings
   * @param whole whole utterances right
   * @param taken of what is not for the console, taken for a value or a command
   * @param asked of what is not for the console, asked about
   */
  record Score(PeerSettings settings, int whole, int taken, int asked) {

    /** Whether it is better than another where so many may be taken. */
    boolean isBetterThan(Score other, int allowed) {
      int over = Math.max(0, taken - allowed);
      int otherOver = Math.max(0, other.taken - allowed);
      if (over != otherOver) {
        return over < otherOver;
      }
      return whole != other.whole ? whole > other.whole : asked < other.asked;
    }
  }

  /**
   * A sweep.
   *
   * @param peer hears the trials
   * @param allowed how much of what is not for the console it may take
   * @param out where each try is printed
   */
  Sweep(Listener<PeerSettings> peer, int allowed, PrintStream out) {
    this.peer = peer;
    this.allowed = allowed;
    this.out = out;
  }

  /** Finds the best settings. */
  PeerSettings run() throws IOException, InterruptedException {
    best = tried(PeerSettings.DEFAULTS);
    from(best.settings.withNormalisation("batch"));
    for (PeerSettings.Phrasing phrasing : PeerSettings.Phrasing.values()) {
      from(best.settings.withPhrases(phrasing));
    }
    languageWeights(3, 10);
    garbage();
    for (double penalty : List.of(0.05, 0.2, 1.0)) {
      from(best.settings.withInsertion(penalty));
    }
    from(best.settings.withFillers(0.05, 1e-8));
    from(best.settings.withFillers(0.2, 1e-8));
    from(best.settings.withFillers(best.settings.silence(), 1e-4));
    from(best.settings.withFillers(best.settings.silence(), 1e-2));
    double weight = best.settings.languageWeight();
    languageWeights(0.7 * weight, 1.4 * weight);
    out.printf("best: %s%n", best);
    return best.settings;
  }

  private void languageWeights(double... weights) throws IOException, InterruptedException {
    PeerSettings base = best.settings;
    for (double weight : weights) {
      from(base.withLanguageWeight(weight));
    }
  }

  private void garbage() throws IOException, InterruptedException {
    PeerSettings base = best.settings;
    from(base.withGarbage(PeerSettings.Garbage.NONE, 1));
    for (int run : List.of(1, 2, 5)) {
      from(base.withGarbage(PeerSettings.Garbage.PHONES, run));
    }
  }

  private void from(PeerSettings settings) throws IOException, InterruptedException {
    Score score = tried(settings);
    if (score.isBetterThan(best, allowed)) {
      best = score;
    }
  }

  private Score tried(PeerSettings settings) throws IOException, InterruptedException {
    Accuracy speech = new Accuracy();
    List<Verdict> chatter = new ArrayList<>();
    for (Trial trial : peer.hear(settings)) {
      Outcome heard = trial.peer().orElseThrow().sure();
      if (trial.said().isChatter()) {
        chatter.add(heard.verdict());
      } else {
        speech.add(trial.said().words(), heard);
      }
    }
    int taken = (int) chatter.stream().filter(Verdict.WRONG::equals).count();
    int asked = (int) chatter.stream().filter(Verdict.AGAIN::equals).count();
    Score score = new Score(settings, speech.wholeRight(), taken, asked);
    out.printf(
        Locale.ROOT,
        "whole %4d of %d, value %4d, wrong %3d, taken %2d, asked %3d: %s%n",
        score.whole,
        speech.utterances(),
        speech.of(Verdict.RIGHT),
        speech.of(Verdict.WRONG),
        taken,
        asked,
        settings);
    return score;
  }
}
