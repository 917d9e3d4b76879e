package org.calamus.core.instrument;

import java.util.List;
import java.util.Objects;
import org.calamus.core.record.FieldValue.Measure;

/**
 * A value to be believed.
 *
 * @param value the amount as received, with its unit
 * @param rawLines the lines it rests on, oldest first, to be kept with the record
 * @param how why it is believed
 */
public record Settled(Measure value, List<String> rawLines, How how) {

  /** Copies the lines. */
  public Settled {
    Objects.requireNonNull(value);
    rawLines = List.copyOf(rawLines);
    Objects.requireNonNull(how);
  }

  /** Why a value is believed. */
  public enum How {
    /** The instrument marked it as stable. */
    MARKED_STABLE("marked stable by the instrument"),
    /** Enough readings agreed for long enough; the value is their median. */
    READINGS_AGREED("median of readings that agreed"),
    /** The instrument sends a value only when its button is pressed. */
    SENT_SINGLY("sent singly by the instrument");

    private final String words;

    How(String words) {
      this.words = words;
    }

    /** The words kept with the record. */
    public String words() {
      return words;
    }
  }
}
