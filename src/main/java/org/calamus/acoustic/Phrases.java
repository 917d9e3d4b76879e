package org.calamus.acoustic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The phrases that a model hears whole or not at all. Grammars and results are of single words; for
 * such a model they are put into its terms, and back.
 *
 * <p>Immutable.
 */
public final class Phrases {

  private final Set<String> names;

  private Phrases(Set<String> names) {
    this.names = names;
  }

  /**
   * The phrases among the words of a model.
   *
   * @param names of words and phrases, as {@link WordToBuild#word()} gives them
   */
  public static Phrases among(Stream<String> names) {
    Set<String> phrases = new HashSet<>();
    names.filter(name -> WordToBuild.parted(name).size() > 1).forEach(phrases::add);
    return new Phrases(phrases);
  }

  /** A line of a grammar in the model's terms: from the left the longest phrase that it has. */
  public String joined(String line) {
    List<String> words = Arrays.asList(line.split(" "));
    List<String> all = new ArrayList<>();
    int at = 0;
    while (at < words.size()) {
      int length = longest(words, at);
      all.add(WordToBuild.joined(words.subList(at, at + length)));
      at += length;
    }
    return String.join(" ", all);
  }

  private int longest(List<String> words, int at) {
    for (int end = words.size(); end > at + 1; end--) {
      if (names.contains(WordToBuild.joined(words.subList(at, end)))) {
        return end - at;
      }
    }
    return 1;
  }

  /** The single words of a name in the model's terms: one, or those of a phrase. */
  public List<String> parted(String name) {
    return names.contains(name) ? WordToBuild.parted(name) : List.of(name);
  }
}
