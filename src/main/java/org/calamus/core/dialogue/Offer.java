package org.calamus.core.dialogue;

import java.util.List;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Heard;

/**
 * A value on its way into a field.
 *
 * @param field the field
 * @param heard the value, or why there is none
 * @param provenance how it came in
 * @param overruled the ids of the rules that the bander has answered for it already
 */
record Offer(FieldId field, Heard heard, Provenance provenance, List<String> overruled) {

  Offer {
    overruled = List.copyOf(overruled);
  }

  /** An offer that no rule was asked about yet. */
  Offer(FieldId field, Heard heard, Provenance provenance) {
    this(field, heard, provenance, List.of());
  }
}
