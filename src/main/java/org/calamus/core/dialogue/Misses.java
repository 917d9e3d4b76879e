package org.calamus.core.dialogue;

import java.util.Optional;
import org.calamus.core.record.FieldId;

/**
 * How often in a row something said for a field was not understood.
 *
 * @param field the field; empty for a question that is about none
 * @param count how often
 */
record Misses(Optional<FieldId> field, int count) {

  /** From here on the console no longer guesses. */
  static final int MOST = 3;

  static Misses none() {
    return new Misses(Optional.empty(), 0);
  }

  Misses oneMore(Optional<FieldId> asked) {
    return new Misses(asked, of(asked) + 1);
  }

  /** How often it was so for a field. */
  int of(Optional<FieldId> asked) {
    return field.equals(asked) ? count : 0;
  }

  /** Whether a field is left to the keypad. */
  boolean isGivenUp(FieldId asked) {
    return of(Optional.of(asked)) >= MOST;
  }

  /** Nothing is held against a field any more. */
  Misses without(FieldId filled) {
    return field.equals(Optional.of(filled)) || field.isEmpty() ? none() : this;
  }
}
