package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Looks for the limits of confidence with which the peer does best on the tuning half: most right
 * values, of those limits with which it takes no more wrong values and no more of what is not for
 * the console than the program's own ears do. Where none is so strict, those that take the least.
 */
final class LimitSweep {

  private static final List<Double> SCALES = List.of(10.0, 20.0, 40.0, 80.0, 160.0, 320.0);
  private static final List<Double> STEPS =
      IntStream.rangeClosed(0, 20).mapToObj(i -> i / 20.0).toList();

  private final Sweep.Listener<Double> peer;
  private final PrintStream out;

  /**
   * A sweep.
   *
   * @param peer hears the trials with one of the scales of {@link PeerLimits#doubt}
   * @param out where the best of each scale is printed
   */
  LimitSweep(Sweep.Listener<Double> peer, PrintStream out) {
    this.peer = peer;
    this.out = out;
  }

  /**
   * What comes of limits.
   *
   * @param value right values
   * @param wrong wrong ones
   * @param taken of what is not for the console
   */
  record Score(int value, int wrong, int taken) {

    /** Whether it is better than another, where our own ears come to a third. */
    boolean isBetterThan(Score other, Score ours) {
      int over = over(ours);
      int otherOver = other.over(ours);
      return over != otherOver ? over < otherOver : value > other.value;
    }

    private int over(Score ours) {
      return Math.max(0, wrong - ours.wrong) + Math.max(0, taken - ours.taken);
    }
  }

  /** Prints the best limits for each scale, and what comes of believing every word. */
  void run() throws IOException, InterruptedException {
    for (double scale : SCALES) {
      List<Trial> trials = peer.hear(scale);
      Score ours = new Score(0, 0, 0);
      for (Trial trial : trials) {
        ours = plus(ours, trial, trial.ours());
      }
      PeerLimits best = new PeerLimits(scale, 0, 0);
      Score most = score(trials, best);
      out.printf(Locale.ROOT, "scale %.0f: ours %s, all believed %s", scale, ours, most);
      for (double least : STEPS) {
        for (double alone : STEPS) {
          PeerLimits limits = new PeerLimits(scale, least, alone);
          Score score = score(trials, limits);
          if (score.isBetterThan(most, ours)) {
            most = score;
            best = limits;
          }
        }
      }
      out.printf(", best %s %s%n", most, best);
    }
  }

  private static Score score(List<Trial> trials, PeerLimits limits) {
    Score sum = new Score(0, 0, 0);
    for (Trial trial : trials) {
      sum = plus(sum, trial, trial.peer().orElseThrow().with(limits));
    }
    return sum;
  }

  private static Score plus(Score sum, Trial trial, Outcome outcome) {
    boolean isWrong = outcome.verdict() == Verdict.WRONG;
    if (trial.said().isChatter()) {
      return new Score(sum.value, sum.wrong, sum.taken + (isWrong ? 1 : 0));
    }
    boolean isRight = outcome.verdict() == Verdict.RIGHT;
    return new Score(sum.value + (isRight ? 1 : 0), sum.wrong + (isWrong ? 1 : 0), sum.taken);
  }
}
