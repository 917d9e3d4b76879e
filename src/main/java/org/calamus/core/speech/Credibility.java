package org.calamus.core.speech;

import java.util.EnumSet;
import java.util.Set;

/**
 * Whether an utterance can be believed to be words said to the console. No single sign tells: the
 * recogniser makes some of its words of any sound and is often sure of them.
 *
 * @param signs all that speaks against it; empty where it can be believed
 */
public record Credibility(Set<Sign> signs) {

  /** What speaks against an utterance. */
  public enum Sign {
    /** There is no word in it that the vocabulary knows. */
    NO_WORD(true),
    /** More of its words are unknown than known: somebody talks of other things. */
    MOSTLY_UNKNOWN(true),
    /** Too short for its words, such as a knock or a door. */
    TOO_QUICK(true),
    /** Too long for its words, such as a gust of wind. */
    TOO_SLOW(true),
    /** Hardly louder than the noise before it. */
    LOST_IN_NOISE(true),
    /** Hardly any of it has the pitch of a voice: wind, cloth, a bird. */
    NO_VOICE(true),
    /** Some word in it is unknown. */
    UNKNOWN_WORD(false),
    /** The recogniser is not sure of some word. */
    UNSURE_WORD(false);

    private final boolean isOfNoSpeech;

    Sign(boolean isOfNoSpeech) {
      this.isOfNoSpeech = isOfNoSpeech;
    }
  }

  /** What a word may take beside its letters, in milliseconds. */
  private static final int WORD_MILLIS = 250;

  /**
   * How far an utterance may go.
   *
   * @param leastConfidence of each word, 0 to 1; where there are other ways to hear the utterance
   *     this is how sure its meaning is
   * @param leastAlone the same of a word said alone, which has nothing beside it that must fit: a
   *     door that slams is heard as one short word
   * @param leastMillisPerWord of what stood above the noise, for each word
   * @param mostMillisPerWord the same at most
   * @param mostMillisPerLetter what a letter of a word may take at most, beside a quarter of a
   *     second for the word
   * @param extraMillis what a single long sound, breath or echo may add to the most
   * @param leastAboveNoise of the speech, in decibels
   * @param leastPitchedMillis of it with the pitch of a voice
   * @param leastPitchedPercent of what stood above the noise with the pitch of a voice: in a long
   *     noise some frames have it by chance
   */
  public record Limits(
      double leastConfidence,
      double leastAlone,
      int leastMillisPerWord,
      int mostMillisPerWord,
      int mostMillisPerLetter,
      int extraMillis,
      int leastAboveNoise,
      int leastPitchedMillis,
      int leastPitchedPercent) {

    /** Checks the ranges. */
    public Limits {
      if (!(leastConfidence >= 0 && leastConfidence <= leastAlone && leastAlone <= 1)
          || leastMillisPerWord < 0
          || mostMillisPerWord <= leastMillisPerWord
          || mostMillisPerLetter < 0
          || extraMillis < 0
          || leastPitchedMillis < 0
          || leastPitchedPercent < 0
          || leastPitchedPercent > 100) {
        throw new IllegalArgumentException("limits out of order");
      }
    }

    /**
     * Wide, so that hardly a right utterance is refused. A meaning must be likelier than all others
     * together; this, and the limit of a word alone, brought most values at once on the tuning half
     * for each wrong one more (docs/benchmarks.md). The voices of the tuning half take 0.2 to 0.6 s
     * a word; people who hesitate take more, and "six" is half hiss, hence 0.1 to 0.9 s; a long
     * word takes more than a short one, and the slowest of them, digits recorded one by one, took
     * 0.25 s and 0.1 s a letter. The distance from the noise is from memory: what is no louder than
     * the noise is none of ours. Of the tuning half every utterance has a pitch for 0.1 s and 23
     * percent at least, wind for 0.02 s and 4 percent at most.
     */
    public static Limits usual() {
      return new Limits(0.51, 0.8, 100, 900, 100, 400, 3, 50, 10);
    }

    /** How long a word may take at most, in milliseconds. */
    private long most(Word word) {
      return word.text().equals(Word.UNKNOWN)
          ? mostMillisPerWord
          : Math.min(mostMillisPerWord, WORD_MILLIS + mostMillisPerLetter * word.text().length());
    }
  }

  /** Copies the set. */
  public Credibility {
    signs = Set.copyOf(signs);
  }

  /** Judges an utterance. */
  public static Credibility of(Utterance utterance, Limits limits) {
    Set<Sign> signs = EnumSet.noneOf(Sign.class);
    int words = utterance.words().size();
    long unknown = utterance.words().stream().filter(w -> w.text().equals(Word.UNKNOWN)).count();
    add(signs, Sign.NO_WORD, unknown == words);
    add(signs, Sign.MOSTLY_UNKNOWN, 2 * unknown > words);
    add(signs, Sign.UNKNOWN_WORD, unknown > 0);
    double least = words == 1 ? limits.leastAlone() : limits.leastConfidence();
    add(signs, Sign.UNSURE_WORD, utterance.lowestConfidence() < least);
    long millis = utterance.voiced().toMillis();
    add(signs, Sign.TOO_QUICK, millis < (long) limits.leastMillisPerWord() * words);
    long most = utterance.words().stream().mapToLong(limits::most).sum() + limits.extraMillis();
    add(signs, Sign.TOO_SLOW, millis > most);
    add(signs, Sign.LOST_IN_NOISE, utterance.aboveNoise() < limits.leastAboveNoise());
    long leastPitched =
        Math.max(limits.leastPitchedMillis(), millis * limits.leastPitchedPercent() / 100);
    add(signs, Sign.NO_VOICE, utterance.pitched().toMillis() < leastPitched);
    return new Credibility(signs);
  }

  private static void add(Set<Sign> signs, Sign sign, boolean isThere) {
    if (isThere) {
      signs.add(sign);
    }
  }

  /** Whether it was not meant for the console: it is met with silence. */
  public boolean isChatter() {
    return signs.stream().anyMatch(s -> s.isOfNoSpeech);
  }

  /** Whether it was said to the console but not heard well enough: it is asked for again. */
  public boolean isUnclear() {
    return !signs.isEmpty() && !isChatter();
  }
}
