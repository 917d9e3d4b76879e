package org.calamus.core.speech;

import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * What the recogniser shall listen for now.
 *
 * @param name a short name, for the log and so that an unchanged grammar is not set again
 * @param phrases the phrases in order; one that occurs more than once is the likelier for it, since
 *     the recogniser counts them
 * @param whole how long an answer of a fixed length is, so that a pause within it does not end it
 */
public record Grammar(String name, List<String> phrases, Whole whole) {

  /**
   * Answers of fixed lengths.
   *
   * @param words of which they are made, such as the digits; empty where no answer has a fixed
   *     length
   * @param counts how many words make a whole answer
   */
  public record Whole(Set<String> words, Set<Integer> counts) {

    /** Copies the sets. */
    public Whole {
      words = Set.copyOf(words);
      counts = Set.copyOf(counts);
    }

    /** For answers of any length. */
    public static Whole any() {
      return new Whole(Set.of(), Set.of());
    }

    /**
     * Whether more must follow what was heard so far.
     *
     * @param heard the words heard so far, which may still change
     */
    public boolean lacksWords(List<String> heard) {
      return !heard.isEmpty()
          && words.containsAll(heard)
          && !counts.contains(heard.size())
          && counts.stream().anyMatch(c -> c > heard.size());
    }
  }

  /** Copies the list. */
  public Grammar {
    Objects.requireNonNull(name);
    Objects.requireNonNull(whole);
    phrases = List.copyOf(phrases);
  }

  /** A grammar whose answers may have any length. */
  public Grammar(String name, List<String> phrases) {
    this(name, phrases, Whole.any());
  }
}
