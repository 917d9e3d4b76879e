package org.calamus.core.form;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Whose codes a station uses on its screen, on its keypad and in what it hands in. */
public enum CodeSet {
  /** The codes of the North American Bird Banding Laboratory. */
  LABORATORY,
  /** The codes of the EURING Exchange Code 2000+. */
  EURING;

  /** The name as it stands in files that people write: {@code euring}. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The set of a name as {@link #key} gives it. */
  public static Optional<CodeSet> ofKey(String key) {
    return Arrays.stream(values()).filter(s -> s.key().equals(key)).findFirst();
  }
}
