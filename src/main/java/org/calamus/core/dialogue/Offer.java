package org.calamus.core.dialogue;

import java.util.List;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Finding;
import org.calamus.core.speech.Heard;

/**
 * A value on its way into a field.
 *
 * @param field the field
 * @param heard the value, or why there is none
 * @param provenance how it came in
 * @param overruled the ids of the rules that the bander has answered for it already
 * @param doubts what is doubtful about the way in which it came, whatever the rules say of it
 */
record Offer(
    FieldId field,
    Heard heard,
    Provenance provenance,
    List<String> overruled,
    List<Finding> doubts) {

  Offer {
    overruled = List.copyOf(overruled);
    doubts = List.copyOf(doubts);
  }

  /** An offer that came in an undoubted way. */
  Offer(FieldId field, Heard heard, Provenance provenance, List<String> overruled) {
    this(field, heard, provenance, overruled, List.of());
  }

  /** An offer that no rule was asked about yet. */
  Offer(FieldId field, Heard heard, Provenance provenance) {
    this(field, heard, provenance, List.of());
  }
}
