package org.calamus.core.rule;

import java.util.Optional;
import org.calamus.core.record.FieldId;

/** Reads the scores of a record as numbers. */
final class Scores {

  private Scores() {}

  /** The score of a field; empty where it has none, or a code that is no digit. */
  static Optional<Integer> of(RuleCase c, FieldId field) {
    return c.record().code(field).filter(s -> s.matches("[0-9]")).map(Integer::valueOf);
  }

  /** Whether a field's score lies between two, both in it; not where it has none. */
  static boolean isBetween(RuleCase c, FieldId field, int least, int most) {
    return of(c, field).filter(s -> s >= least && s <= most).isPresent();
  }
}
