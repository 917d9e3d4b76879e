package org.calamus.core.speech;

import java.util.Objects;

/**
 * One word the recogniser heard.
 *
 * @param text the word as the vocabulary spells it, or {@link #UNKNOWN}
 * @param confidence the recogniser's own confidence, 0 to 1; a weak sign only
 * @param startMillis where the word starts, in milliseconds of audio since the ears opened
 * @param endMillis where it ends
 */
public record Word(String text, double confidence, long startMillis, long endMillis) {

  /** How the recogniser writes speech that is none of its words. */
  public static final String UNKNOWN = "[unk]";

  /** Checks the text. */
  public Word {
    Objects.requireNonNull(text);
  }

  /** A word of full confidence and no known place in time, as tests and typed input need it. */
  public static Word of(String text) {
    return new Word(text, 1.0, 0, 0);
  }

  /** The same with another confidence, 0 to 1. */
  public Word with(double other) {
    return new Word(text, other, startMillis, endMillis);
  }
}
