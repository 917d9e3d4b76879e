package org.calamus.core.dialogue;

import java.util.Optional;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;

/**
 * A change of the record, so that it can be taken back.
 *
 * @param field the field
 * @param before what it held before
 */
record Change(FieldId field, Optional<Entry> before) {}
