package org.calamus.core.form;

/** How a bird left the hand: the codes of {@code RELEASE}. */
public enum Release {
  /** Released when everything wanted had been taken. */
  RELEASED,
  /** Released before that, for its own good. */
  EARLY,
  /** It escaped. */
  ESCAPED,
  /** It died. */
  DIED;

  /** The code of {@code DISPOSITION} that says the same of the bird as {@link #DIED}. */
  public static final String FOUND_DEAD = "D";
}
