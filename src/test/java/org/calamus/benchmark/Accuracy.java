package org.calamus.benchmark;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Adds up how utterances of a set were heard. */
final class Accuracy {

  /** Words that are written in two ways and said in one. */
  private static final Map<String, String> SAME =
      Map.of("juvenile", "juvenal", "molt", "moult", "molting", "moulting");

  private int words;
  private int wrongWords;
  private int utterances;
  private int wholeRight;
  private final int[] verdicts = new int[Verdict.values().length];

  /** Adds an utterance: what was said and how it was heard. */
  void add(String said, Outcome outcome) {
    List<String> saidWords = words(said);
    int errors = errors(saidWords, words(outcome.heard()));
    words += saidWords.size();
    wrongWords += errors;
    utterances++;
    wholeRight += errors == 0 ? 1 : 0;
    verdicts[outcome.verdict().ordinal()]++;
  }

  /** The words of a text; of two ways to write one, always the same. */
  static List<String> words(String text) {
    return Stream.of(text.replace("x-ray", "x ray").split(" "))
        .filter(w -> !w.isEmpty())
        .map(w -> SAME.getOrDefault(w, w))
        .toList();
  }

  int utterances() {
    return utterances;
  }

  int wholeRight() {
    return wholeRight;
  }

  int of(Verdict verdict) {
    return verdicts[verdict.ordinal()];
  }

  /** Wrong, missing and added words, in hundredths of the words said. */
  double wordErrorRate() {
    return words == 0 ? 0 : 100.0 * wrongWords / words;
  }

  /** Least number of words to insert, leave out or replace. */
  static int errors(List<String> said, List<String> heard) {
    int[][] cost = new int[said.size() + 1][heard.size() + 1];
    for (int i = 0; i <= said.size(); i++) {
      for (int k = 0; k <= heard.size(); k++) {
        if (i == 0 || k == 0) {
          cost[i][k] = i + k;
        } else {
          int same = said.get(i - 1).equals(heard.get(k - 1)) ? 0 : 1;
          int replaced = cost[i - 1][k - 1] + same;
          cost[i][k] = Math.min(replaced, 1 + Math.min(cost[i - 1][k], cost[i][k - 1]));
        }
      }
    }
    return cost[said.size()][heard.size()];
  }
}
