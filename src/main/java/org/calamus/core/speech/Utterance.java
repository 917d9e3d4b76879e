package org.calamus.core.speech;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * What was said between two silences.
 *
 * @param words the words in order; empty where sound was heard and no word in it
 * @param hypotheses all ways in which it may be heard, the likeliest first, which is that of the
 *     words; empty where nothing is known of others
 * @param loudness the loudest level in it, in decibels below full scale (0 to -96)
 * @param voiced how much of it stood above the noise floor, pauses left out; never negative
 * @param aboveNoise how far its speech stood above the noise that was there before it, in decibels;
 *     less than 0 where the noise was the louder
 * @param pitched how much of it has the pitch of a voice; never negative
 */
public record Utterance(
    List<Word> words,
    List<Hypothesis> hypotheses,
    int loudness,
    Duration voiced,
    int aboveNoise,
    Duration pitched) {

  /** A word of ordinary speech, for utterances that nobody said. */
  private static final Duration ORDINARY_WORD = Duration.ofMillis(300);

  private static final int ORDINARY_LOUDNESS = -20;
  private static final int ORDINARY_ABOVE_NOISE = 30;

  /** Copies the lists and checks the length. */
  public Utterance {
    words = List.copyOf(words);
    hypotheses = List.copyOf(hypotheses);
    Objects.requireNonNull(voiced);
    if (voiced.isNegative() || pitched.isNegative()) {
      throw new IllegalArgumentException("speech of negative length: " + voiced + ", " + pitched);
    }
  }

  /** An utterance of which no other way to hear it is known, in a voice. */
  public Utterance(List<Word> words, int loudness, Duration voiced, int aboveNoise) {
    this(words, List.of(), loudness, voiced, aboveNoise, voiced);
  }

  /**
   * An utterance that may be heard in several ways.
   *
   * @param hypotheses the ways, the likeliest first; empty where no word was heard
   * @param loudness as of every utterance
   * @param voiced as of every utterance
   * @param aboveNoise as of every utterance
   * @param pitched as of every utterance
   */
  public static Utterance of(
      List<Hypothesis> hypotheses,
      int loudness,
      Duration voiced,
      int aboveNoise,
      Duration pitched) {
    return new Utterance(
        Hypothesis.best(hypotheses), hypotheses, loudness, voiced, aboveNoise, pitched);
  }

  /** The same sound heard in one way and no other. */
  public Utterance with(List<Word> chosen) {
    return new Utterance(chosen, List.of(), loudness, voiced, aboveNoise, pitched);
  }

  /**
   * An utterance of some words, as said clearly and in quiet: what tests and typed words need.
   *
   * @param words the words in order
   */
  public static Utterance of(List<Word> words) {
    return new Utterance(
        words, ORDINARY_LOUDNESS, ORDINARY_WORD.multipliedBy(words.size()), ORDINARY_ABOVE_NOISE);
  }

  /** An utterance of the words of a text, parted by blanks, said clearly and in quiet. */
  public static Utterance of(String text) {
    List<Word> words =
        Arrays.stream(text.strip().split("\\s+")).filter(w -> !w.isEmpty()).map(Word::of).toList();
    return of(words);
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
