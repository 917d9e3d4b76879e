package org.calamus.core.record;

import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * What a correction changed in one field of a saved record. The old entry is kept for ever; the
 * form follows common practice on paper, where a correction leaves the old value readable and bears
 * a date and initials (no published source).
 *
 * @param recordId the store's number for the record, from 1
 * @param field the field
 * @param before the entry as it was saved before; empty where there was none
 * @param after the entry that took its place; empty where the field was emptied
 * @param why why, and by whom
 * @param at when the correction was saved (UTC)
 */
public record Amendment(
    long recordId,
    FieldId field,
    Optional<Entry> before,
    Optional<Entry> after,
    Why why,
    Instant at) {

  /** Checks the parts. */
  public Amendment {
    Objects.requireNonNull(field);
    Objects.requireNonNull(why);
    Objects.requireNonNull(at);
    if (before.isEmpty() && after.isEmpty()) {
      throw new IllegalArgumentException("nothing became nothing");
    }
  }

  /**
   * Why a record was corrected, and by whom.
   *
   * @param reason the reason
   * @param memo the name of the sound file in which it was told; empty where it was not
   * @param bander the initials of who corrected it; not blank
   */
  public record Why(Reason reason, Optional<String> memo, String bander) {

    /** Checks the parts. */
    public Why {
      Objects.requireNonNull(reason);
      Objects.requireNonNull(memo);
      if (bander.isBlank()) {
        throw new IllegalArgumentException("a correction bears initials");
      }
    }
  }

  /** The reasons there are, in the order of their numbers on the keypad, from 1. */
  public enum Reason {
    /** The console heard another word. */
    MISHEARD("misheard"),
    /** Another key was struck. */
    MISKEYED("typing error"),
    /** The band, the rule or the balance was read wrongly. */
    MISREAD("reading error"),
    /** The value was right and went into another field. */
    WRONG_FIELD("wrong field"),
    /** The bird was looked at again: species, age or sex are judged anew. */
    IDENTIFIED_ANEW("identified anew"),
    /** Anything else, told in a memo. */
    OTHER("something else");

    private final String words;

    Reason(String words) {
      this.words = words;
    }

    /** As shown and said. */
    public String words() {
      return words;
    }

    /** As stored: {@code wrong-field}. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The number that is struck for it, from 1. */
    public int number() {
      return ordinal() + 1;
    }

    /** The reason of a number; empty where there is none. */
    public static Optional<Reason> ofNumber(String digits) {
      return Arrays.stream(values())
          .filter(r -> String.valueOf(r.number()).equals(digits))
          .findFirst();
    }

    /** The reason of a key as {@link #key} gives it; empty where there is none. */
    public static Optional<Reason> ofKey(String key) {
      return Arrays.stream(values()).filter(r -> r.key().equals(key)).findFirst();
    }
  }
}
