package org.calamus.benchmark;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * A grammar of the console as a bigram in the ARPA format, counted as the console's own recogniser
 * counts it: phrases begin anywhere, half of what follows a word is kept for words that were not
 * seen behind it.
 *
 * <p>The recogniser takes the better of the two ways to a word and lets the rest of the probability
 * go; here both ways are added up, so that the weights sum to 1 as the format wants it.
 */
final class Arpa {

  private static final String END = "</s>";
  private static final double KEPT = 0.5;

  private final Map<String, Integer> words = new TreeMap<>();
  private final Map<String, Map<String, Integer>> pairs = new TreeMap<>();
  private int all;

  /**
   * Counts phrases; one that occurs more than once counts as often.
   *
   * @param phrases words parted by blanks
   */
  Arpa(List<String> phrases) {
    for (String phrase : phrases) {
      String before = "";
      for (String word : (phrase + " " + END).split(" ")) {
        words.merge(word, 1, Integer::sum);
        all++;
        if (!before.isEmpty()) {
          pairs.computeIfAbsent(before, w -> new TreeMap<>()).merge(word, 1, Integer::sum);
        }
        before = word;
      }
    }
  }

  /** How likely a word is by itself. */
  double weight(String word) {
    return (double) words.getOrDefault(word, 0) / all;
  }

  /** How likely a word is behind another one. */
  double weight(String before, String word) {
    Map<String, Integer> behind = pairs.getOrDefault(before, Map.of());
    double total = behind.values().stream().mapToInt(Integer::intValue).sum();
    double seen = total == 0 ? 0 : KEPT * behind.getOrDefault(word, 0) / total;
    return seen + (1 - KEPT) * weight(word);
  }

  /** All words, the end of a phrase among them. */
  List<String> words() {
    return List.copyOf(words.keySet());
  }

  /** The file's text. */
  String text() {
    StringBuilder single = new StringBuilder();
    StringBuilder paired = new StringBuilder();
    int count = 0;
    single.append(line(-99, "<s>", 0));
    for (String word : words.keySet()) {
      boolean isEnd = word.equals(END);
      single.append(line(Math.log10(weight(word)), word, isEnd ? 0 : Math.log10(1 - KEPT)));
      for (String next : pairs.getOrDefault(word, Map.of()).keySet()) {
        paired.append(
            String.format(Locale.ROOT, "%.5f %s %s%n", Math.log10(weight(word, next)), word, next));
        count++;
      }
    }
    return String.format(
        Locale.ROOT,
        "\\data\\%nngram 1=%d%nngram 2=%d%n%n\\1-grams:%n%s%n\\2-grams:%n%s%n\\end\\%n",
        words.size() + 1,
        count,
        single,
        paired);
  }

  private static String line(double weight, String word, double rest) {
    return String.format(Locale.ROOT, "%.5f %s %.5f%n", weight, word, rest);
  }
}
