package org.calamus.benchmark;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/** Prints what came of many utterances. */
final class Tables {

  private final PrintStream out;

  /** Tables on a stream. */
  Tables(PrintStream out) {
    this.out = out;
  }

  /** Speech that is meant for the console, one row for each value of a key. */
  void speech(String title, List<Trial> trials, Function<Trial, String> key) {
    Map<String, Accuracy> rows = new TreeMap<>();
    Accuracy all = new Accuracy();
    for (Trial trial : trials) {
      if (!trial.said().isChatter()) {
        Accuracy row = rows.computeIfAbsent(key.apply(trial), k -> new Accuracy());
        row.add(trial.said().words(), trial.heard(), trial.verdict());
        all.add(trial.said().words(), trial.heard(), trial.verdict());
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    out.printf(
        Locale.ROOT,
        "%n%-36s %5s %7s %9s %8s %8s %8s%n",
        title,
        "said",
        "WER %",
        "all words",
        "value",
        "again",
        "wrong");
    rows.forEach(this::row);
    row("together", all);
  }

  private void row(String name, Accuracy sum) {
    out.printf(
        Locale.ROOT,
        "%-36s %5d %7.1f %8.1f%% %8d %8d %8d%n",
        name,
        sum.utterances(),
        sum.wordErrorRate(),
        100.0 * sum.wholeRight() / Math.max(1, sum.utterances()),
        sum.of(Verdict.RIGHT),
        sum.of(Verdict.AGAIN),
        sum.of(Verdict.WRONG));
  }

  /** Sound that is not meant for the console, one row for each value of a key. */
  void chatter(String title, List<Trial> trials, Function<Trial, String> key) {
    Map<String, double[]> rows = new TreeMap<>();
    for (Trial trial : trials) {
      if (trial.said().isChatter()) {
        for (String name : List.of(key.apply(trial), "~together")) {
          double[] row = rows.computeIfAbsent(name, k -> new double[4]);
          row[0] += trial.seconds() / 60;
          row[1] += words(trial.heard());
          row[2] += asked(trial) ? 1 : 0;
          row[3] += trial.verdict() == Verdict.WRONG ? 1 : 0;
        }
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    out.printf(
        Locale.ROOT,
        "%n%-36s %8s %8s %8s %8s %10s%n",
        title,
        "minutes",
        "words",
        "asked",
        "taken",
        "a minute");
    rows.forEach(
        (name, row) ->
            out.printf(
                Locale.ROOT,
                "%-36s %8.1f %8.0f %8.0f %8.0f %10.2f%n",
                name.replace("~", ""),
                row[0],
                row[1],
                row[2],
                row[3],
                row[3] / Math.max(1e-9, row[0])));
  }

  private static boolean asked(Trial trial) {
    return trial.verdict() == Verdict.AGAIN;
  }

  private static int words(String heard) {
    return (int)
        List.of(heard.split(" ")).stream()
            .filter(w -> !w.isEmpty() && !w.equals("|") && !w.equals("[unk]"))
            .count();
  }
}
