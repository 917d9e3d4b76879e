package org.calamus.core.form;

import org.calamus.core.record.FieldId;

/**
 * A field as the form has it.
 *
 * @param id the field
 * @param label its name on the screen, such as {@code Wing chord}
 * @param spoken its name in speech, such as {@code wing}
 * @param kind what it holds
 * @param isRequired whether a record cannot be saved without
 */
public record FieldSpec(
    FieldId id, String label, String spoken, FieldKind kind, boolean isRequired) {

  /** The label with the unit of a measured field. */
  public String labelWithUnit() {
    return kind instanceof FieldKind.Measured m ? label + ", " + m.unit().symbol() : label;
  }
}
