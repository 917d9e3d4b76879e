package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Prints what belongs to which half, what is said in one, and what is missing. */
final class Split {

  private Split() {}

  /** Prints the split, and what a half consists of. */
  static void print(Half half, List<Said> said, Judge judge, PrintStream out) throws IOException {
    out.printf("%s half%n%n", half);
    for (Half each : Half.values()) {
      out.printf(
          "%-10s seed %d; %s%n", each, UtteranceSets.seed(each), names(each, Speaker::isThere));
    }
    List<String> missing =
        Speakers.all().stream().filter(s -> !s.isThere()).map(Speaker::name).distinct().toList();
    out.printf("not there: %s%n", missing.isEmpty() ? "nobody" : String.join(", ", missing));
    out.printf(
        "names, codes, commands: every second one of the vocabulary for each half; numbers by the"
            + " seed%n");
    Map<String, Long> sets =
        said.stream()
            .collect(Collectors.groupingBy(Said::set, TreeMap::new, Collectors.counting()));
    out.printf(
        "%d utterances: %s%n",
        said.size(),
        sets.entrySet().stream()
            .map(e -> e.getKey() + " " + e.getValue())
            .collect(Collectors.joining("; ")));
    List<String> deaf =
        said.stream()
            .filter(s -> !s.isChatter() && !judge.isListenedFor(s))
            .map(s -> s.words() + " (" + judge.grammar(s).name() + ")")
            .toList();
    out.printf(
        "said though a word of it is not listened for: %d%s%n%n",
        deaf.size(), half == Half.TUNING ? " " + deaf : "");
  }

  private static String names(Half half, java.util.function.Predicate<Speaker> which)
      throws IOException {
    return Speakers.all().stream()
        .filter(s -> s.half() == half)
        .filter(which)
        .map(Speaker::name)
        .collect(Collectors.joining(", "));
  }
}
