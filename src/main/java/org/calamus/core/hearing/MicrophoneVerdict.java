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

  /** Louder is a place in which a voice may stand out too little to be noticed; our decision. */
  private static final int LOUD_PLACE = -40;

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
   * @param score how the self-test went
   */
  public static MicrophoneVerdict of(Levels levels, Score score) {
    boolean isNobody = score.isNothing() && levels.aboveNoise() < LEAST_DECIBELS;
    List<String> advice = isNobody ? toNobody(levels) : advice(levels);
    Grade grade =
        10 * score.right() < LEAST_OF_TEN * score.asked() || levels.aboveNoise() < LEAST_DECIBELS
            ? Grade.NOT_USABLE
            : score.right() == score.asked() && advice.isEmpty() ? Grade.GOOD : Grade.USABLE;
    String name =
        switch (grade) {
          case GOOD -> "Good";
          case USABLE -> "Usable";
          case NOT_USABLE -> "Not usable here";
        };
    if (grade != Grade.GOOD && advice.isEmpty()) {
      advice.add("Say the words evenly and apart from other talk, and run this check again.");
    }
    // a hum is part of the noise: where the voice stands clear of both, it changes no verdict
    levels.hum().map(MicrophoneVerdict::against).ifPresent(advice::add);
    String sentence =
        isNobody
            ? name + ": nobody was heard."
            : (name + ": " + score.right() + " of " + score.asked() + " right, ")
                + (levels.aboveNoise() + " dB above the noise.");
    return new MicrophoneVerdict(grade, sentence, advice);
  }

  private static String against(Hum hum) {
    return "The mains hum at "
        + hum.hertz()
        + " Hz, louder than the rest of the noise: lay the microphone's cable away from chargers,"
        + " lamps and power cables, try it with the charger unplugged or at another socket, or"
        + " take a USB microphone.";
  }

  private static List<String> toNobody(Levels levels) {
    List<String> advice = new ArrayList<>();
    advice.add(
        "Say each thing when it is shown; where you did, unmute the microphone, move it nearer, or"
            + " choose it in the system's settings.");
    if (levels.noise() > LOUD_PLACE) {
      advice.add("The place is loud: a voice may stand out too little; type there.");
    }
    return advice;
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
