package org.calamus.acoustic;

import java.util.List;
import java.util.Optional;

/**
 * A word the model shall know.
 *
 * <p>The same word may be given several times (two vocabularies can share one): the pronunciations
 * are then joined and the first chain named counts.
 *
 * @param word as it will stand in grammars and results: no blanks, not one of the model's own marks
 * @param pronunciations how it is said, in the dictionary's phones ("N AY N ER"); with none given
 *     the dictionary is asked, so these are for words it lacks or has otherwise
 * @param chain name of the chain of words it belongs to, which are said without a pause between
 *     them (digits; the spelling alphabet): these are also joined sound to sound, which roughly
 *     halves the errors in strings of them, at the price of a larger graph
 * @param where file and line it came from, for messages
 */
public record WordToBuild(
    String word, List<String> pronunciations, Optional<String> chain, String where) {

  /** Stands between the words of a phrase. */
  private static final String SEAM = "_";

  /** Copies the list. */
  public WordToBuild {
    pronunciations = List.copyOf(pronunciations);
  }

  /**
   * Makes a phrase of several words that is heard whole or not at all, with or without pauses
   * between them. Its words are given by themselves as well.
   *
   * @param words at least two, none with a "_" in it
   * @param where file and line it came from, for messages
   */
  public static WordToBuild phrase(List<String> words, String where) {
    return plain(joined(words), where);
  }

  /** The name of a phrase in grammars and results: its words, parted by "_". */
  public static String joined(List<String> words) {
    return String.join(SEAM, words);
  }

  /** The words of a name in grammars and results: one, or those of a phrase. */
  public static List<String> parted(String name) {
    return List.of(name.split(SEAM));
  }

  /** Whether it is a phrase. */
  public boolean isPhrase() {
    return parted(word).size() > 1;
  }

  /** Makes a word that stands in the dictionary and in no chain. */
  public static WordToBuild plain(String word, String where) {
    return new WordToBuild(word, List.of(), Optional.empty(), where);
  }

  /** Makes a word that stands in the dictionary and in a chain. */
  public static WordToBuild chained(String word, String chain, String where) {
    return new WordToBuild(word, List.of(), Optional.of(chain), where);
  }
}
