package org.calamus.core.record;

import java.util.Objects;

/**
 * How a value came in, kept with it for ever.
 *
 * @param way the way in
 * @param detail what was heard, which keys were struck, or the instrument and its raw line; may be
 *     empty, never null
 */
public record Provenance(Way way, String detail) {

  /** Checks that both parts are there. */
  public Provenance {
    Objects.requireNonNull(way);
    Objects.requireNonNull(detail);
  }

  /** The ways in. */
  public enum Way {
    /** Spoken by the bander. */
    SAID("said"),
    /** Struck on the keypad or keyboard. */
    KEYED("keyed"),
    /** Sent by an instrument. */
    MEASURED("measured"),
    /** Concluded by the console from other values, such as the size from the band's string. */
    CONCLUDED("concluded");

    private final String word;

    Way(String word) {
      this.word = word;
    }

    /** The word shown and stored. */
    public String word() {
      return word;
    }
  }
}
