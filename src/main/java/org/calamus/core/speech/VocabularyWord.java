package org.calamus.core.speech;

import java.util.List;

/**
 * A word that the recogniser must know.
 *
 * @param word the word
 * @param pronunciations the pronunciations that the vocabulary gives, phones parted by blanks;
 *     empty where the dictionary is to be asked
 * @param chain the section whose words are said without a pause between them; empty where none
 * @param where file and line, for messages
 */
public record VocabularyWord(String word, List<String> pronunciations, String chain, String where) {

  /** Copies the list. */
  public VocabularyWord {
    pronunciations = List.copyOf(pronunciations);
  }
}
