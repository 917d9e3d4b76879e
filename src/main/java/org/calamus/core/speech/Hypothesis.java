package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * One way in which an utterance may be heard, of several that rival each other.
 *
 * @param words the words in order; empty where nothing was heard
 * @param share how likely it is among all the ways that were found, 0 to 1; together they are 1
 */
public record Hypothesis(List<Word> words, double share) {

  /** Copies the list and checks the share. */
  public Hypothesis {
    words = List.copyOf(words);
    if (!(share >= 0 && share <= 1)) {
      throw new IllegalArgumentException("a share out of 0 to 1: " + share);
    }
  }

  /** The words, parted by one blank. */
  public String text() {
    return words.stream().map(Word::text).collect(Collectors.joining(" "));
  }

  /**
   * Hypotheses of how well each fits the sound.
   *
   * @param words of each, the best first
   * @param scores of each, as natural logarithms of its likelihood but for a common addend
   */
  public static List<Hypothesis> ofScores(List<List<Word>> words, List<Double> scores) {
    double best = scores.stream().mapToDouble(s -> s).max().orElse(0);
    double sum = scores.stream().mapToDouble(s -> Math.exp(s - best)).sum();
    List<Hypothesis> all = new ArrayList<>();
    for (int i = 0; i < scores.size(); i++) {
      all.add(new Hypothesis(words.get(i), Math.exp(scores.get(i) - best) / sum));
    }
    return all;
  }

  /**
   * The words of the first of some hypotheses; the confidence of each is the share of all in which
   * it is said at that time.
   */
  static List<Word> best(List<Hypothesis> all) {
    return all.isEmpty()
        ? List.of()
        : all.get(0).words.stream().map(w -> w.with(share(w, all))).toList();
  }

  private static double share(Word word, List<Hypothesis> all) {
    double share = all.stream().filter(h -> h.says(word)).mapToDouble(Hypothesis::share).sum();
    return Math.min(1, share);
  }

  private boolean says(Word word) {
    return words.stream()
        .anyMatch(
            w ->
                w.text().equals(word.text())
                    && w.startMillis() <= word.endMillis()
                    && word.startMillis() <= w.endMillis());
  }
}
