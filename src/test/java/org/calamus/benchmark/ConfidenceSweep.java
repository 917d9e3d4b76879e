package org.calamus.benchmark;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Utterance;

/**
 * What would come of the same utterances if the console asked again below another confidence: for
 * choosing {@link Credibility.Limits#leastConfidence()} on the tuning half.
 */
final class ConfidenceSweep {

  private static final double STEP = 0.05;
  private static final int STEPS = 19;

  private final Judge judge;
  private final PrintStream out;

  ConfidenceSweep(Judge judge, PrintStream out) {
    this.judge = judge;
    this.out = out;
  }

  /** Prints one row for each confidence, for every kind of speaker. */
  void print(List<Trial> trials) {
    List<String> groups = trials.stream().map(t -> t.speaker().group()).distinct().toList();
    for (String group : groups) {
      print(group, trials, t -> t.speaker().group().equals(group));
    }
    print("together, without espeak", trials, t -> !t.speaker().group().equals("espeak"));
  }

  private void print(String title, List<Trial> trials, Predicate<Trial> isIn) {
    List<Trial> mine = trials.stream().filter(isIn).toList();
    long chatter = mine.stream().filter(t -> t.said().isChatter()).count();
    out.printf(
        "%n%-26s %6s %6s %6s   not for the console: %6s %6s of %d%n",
        title, "value", "again", "wrong", "asked", "taken", chatter);
    for (int i = 1; i <= STEPS; i++) {
      row(i * STEP, mine);
    }
  }

  private void row(double least, List<Trial> trials) {
    int[] speech = new int[Verdict.values().length];
    int[] chatter = new int[Verdict.values().length];
    for (Trial trial : trials) {
      List<Utterance> heard = new ArrayList<>();
      for (Utterance utterance : trial.ours().utterances()) {
        heard.add(with(judge.heardAs(trial.said(), utterance), least));
      }
      Verdict verdict = judge.of(trial.said(), heard);
      (trial.said().isChatter() ? chatter : speech)[verdict.ordinal()]++;
    }
    out.printf(
        Locale.ROOT,
        "%-26.2f %6d %6d %6d %28d %6d%n",
        least,
        speech[Verdict.RIGHT.ordinal()],
        speech[Verdict.AGAIN.ordinal()],
        speech[Verdict.WRONG.ordinal()],
        chatter[Verdict.AGAIN.ordinal()],
        chatter[Verdict.WRONG.ordinal()]);
  }

  /** Each word certain, or not believed, by whether it reaches a confidence. */
  private static Utterance with(Utterance utterance, double least) {
    return utterance.with(
        utterance.words().stream().map(w -> w.with(w.confidence() >= least ? 1 : 0)).toList());
  }
}
