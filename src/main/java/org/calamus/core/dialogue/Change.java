package org.calamus.core.dialogue;

import java.util.Optional;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;

/** Something that happened to the record, so that it can be taken back. */
sealed interface Change {

  /** The field. */
  FieldId field();

  /**
   * A value was given, or a field was emptied.
   *
   * @param field the field
   * @param before what it held before
   */
  record Given(FieldId field, Optional<Entry> before) implements Change {}

  /**
   * The console concluded a value from another, with which it is taken back.
   *
   * @param field the field
   * @param before what it held before
   * @param from the field from which it was concluded
   */
  record Concluded(FieldId field, Optional<Entry> before, FieldId from) implements Change {}

  /**
   * A field was left as it was.
   *
   * @param field the field
   */
  record Passed(FieldId field) implements Change {}
}
