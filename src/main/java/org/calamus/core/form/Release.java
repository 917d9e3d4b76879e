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
  DIED
}
