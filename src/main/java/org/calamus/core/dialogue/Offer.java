package org.calamus.core.dialogue;

import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Heard;

/**
 * A value on its way into a field.
 *
 * @param field the field
 * @param heard the value, or why there is none
 * @param provenance how it came in
 */
record Offer(FieldId field, Heard heard, Provenance provenance) {}
