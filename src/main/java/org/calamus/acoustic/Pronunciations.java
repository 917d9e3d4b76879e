package org.calamus.acoustic;

import java.util.List;
import java.util.Map;

/** Tells how words are said. */
public final class Pronunciations {

  private Pronunciations() {}

  /**
   * The pronunciations of words, phones parted by blanks: those that a word brings along, or else
   * those of the dictionary; an empty list for a word that has none.
   *
   * @param words the words
   * @param dictionary the text of the pronouncing dictionary
   */
  public static Map<String, List<String>> of(List<WordToBuild> words, String dictionary) {
    Map<String, List<String>> found = Lexicon.lookUp(words, dictionary);
    for (WordToBuild word : words) {
      if (!word.pronunciations().isEmpty()) {
        found.put(word.word(), word.pronunciations());
      }
    }
    return found;
  }
}
