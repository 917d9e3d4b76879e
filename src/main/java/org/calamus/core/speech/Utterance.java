package org.calamus.core.speech;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What was said between two silences.
 *
 * @param words the words in order; empty where sound was heard and no word in it
 * @param loudness the loudest level in it, in decibels below full scale (0 to -96)
 */
public record Utterance(List<Word> words, int loudness) {

  /** Copies the list. */
  public Utterance {
    words = List.copyOf(words);
  }

  /** An utterance of the words of a text, parted by blanks. */
  public static Utterance of(String text) {
    List<Word> words =
        Arrays.stream(text.strip().split("\\s+")).filter(w -> !w.isEmpty()).map(Word::of).toList();
    return new Utterance(words, -20);
  }

  /** The words, parted by one blank. */
  public String text() {
    return words.stream().map(Word::text).collect(Collectors.joining(" "));
  }

  /** Whether some of it was no word of the vocabulary. */
  public boolean hasUnknown() {
    return words.stream().anyMatch(w -> w.text().equals(Word.UNKNOWN));
  }

  /** The lowest confidence of its words; 1 where there is none. */
  public double lowestConfidence() {
    return words.stream().mapToDouble(Word::confidence).min().orElse(1.0);
  }
}
