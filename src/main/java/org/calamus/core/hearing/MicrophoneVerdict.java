package org.calamus.core.hearing;

import java.util.ArrayList;
import java.util.List;

/**
 * What the microphone check concludes.
 *
 * @param grade whether it will do
 * @param sentence the verdict in one sentence
 * @param advice what to do about it, a sentence each; may be empty
 */
public record MicrophoneVerdict(Grade grade, String sentence, List<String> advice) {

  /** With less between voice and noise errors grow (docs/benchmarks.md). */
  public static final int CLEAR_DECIBELS = 25;

  /**
   * With less, the recogniser is not to be relied on, whatever ten words say; a design decision.
   */
  private static final int LEAST_DECIBELS = 12;

  /** Softer speech is more than the level control can raise to what the recogniser knows. */
  private static final int QUIET = -45;

  /**
   * More of a thousand samples at full scale are clipping; common practice, no published source.
   */
  private static final int MOST_CLIPPED = 5;

  /** Of ten, so many must be right to work by voice at all; a design decision. */
  private static final int LEAST_OF_TEN = 7;

  /** Whether the microphone will do at this place. */
  public enum Grade {
    /** All right. */
    GOOD,
    /** It can be worked with. */
    USABLE,
    /** Better by keypad. */
    NOT_USABLE
  }

  /** Copies the list. */
  public MicrophoneVerdict {
    advice = List.copyOf(advice);
  }

  /**
   * Judges what was measured and heard.
   *
   * @param levels what was measured
   * @param right how many were heard rightly, repeats included
   * @param asked how many were asked, at least 1
   */
  public static MicrophoneVerdict of(Levels levels, int right, int asked) {
    List<String> advice = advice(levels);
    Grade grade =
        10 * right < LEAST_OF_TEN * asked || levels.aboveNoise() < LEAST_DECIBELS
            ? Grade.NOT_USABLE
            : right == asked && advice.isEmpty() ? Grade.GOOD : Grade.USABLE;
    String name =
        switch (grade) {
          case GOOD -> "Good";
          case USABLE -> "Usable";
          case NOT_USABLE -> "Not usable here";
        };
    if (grade != Grade.GOOD && advice.isEmpty()) {
      advice.add("Say the words evenly and apart from other talk, and run this check again.");
    }
    String sentence =
        (name + ": " + right + " of " + asked + " right, ")
            + (levels.aboveNoise() + " dB above the noise.");
    return new MicrophoneVerdict(grade, sentence, advice);
  }

  private static List<String> advice(Levels levels) {
    List<String> advice = new ArrayList<>();
    if (levels.clippedPerMille() > MOST_CLIPPED) {
      advice.add("It clips: lower the microphone's level in the system's settings.");
    }
    if (levels.speech() < QUIET) {
      advice.add(
          "The microphone is too quiet: raise its level in the system's settings, or move it"
              + " nearer.");
    }
    if (levels.aboveNoise() < CLEAR_DECIBELS) {
      advice.add(
          "The place is loud, "
              + levels.aboveNoise()
              + " dB between voice and noise: hold the microphone nearer, or type numbers.");
    }
    return advice;
  }
}
