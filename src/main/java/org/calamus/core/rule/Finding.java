package org.calamus.core.rule;

import java.util.Objects;
import org.calamus.core.record.FieldId;

/**
 * What a rule has to say of a value.
 *
 * @param rule the rule's id, as stored with the value when the bander overrules it
 * @param severity whether it refuses, asks or only notes
 * @param field the field the finding is about, which need not be the one just filled
 * @param shown one sentence for the screen: field, value, and what would fit
 * @param spoken the same, short, with numbers digit by digit
 */
public record Finding(String rule, Severity severity, FieldId field, String shown, String spoken) {

  /** Checks that every part is there. */
  public Finding {
    Objects.requireNonNull(rule);
    Objects.requireNonNull(severity);
    Objects.requireNonNull(field);
    Objects.requireNonNull(shown);
    Objects.requireNonNull(spoken);
  }

  /** How much weight a finding has. */
  public enum Severity {
    /** The value would corrupt the data: it is not stored. */
    REFUSED,
    /** The value is doubtful: the bander is asked and may keep it. */
    ASKS,
    /** The value is taken; what is odd about it is shown, and stands in the evening's list. */
    NOTES
  }
}
