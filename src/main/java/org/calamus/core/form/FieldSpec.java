package org.calamus.core.form;

import java.util.Optional;
import org.calamus.core.record.FieldId;

/**
 * A field as the form has it.
 *
 * @param id the field
 * @param label its name on the screen, such as {@code Wing chord}
 * @param spoken its name in speech, such as {@code wing}
 * @param kind what it holds
 * @param usual the value that a record gets at the end where none was given, as stored; empty where
 *     there is no usual one
 */
public record FieldSpec(
    FieldId id, String label, String spoken, FieldKind kind, Optional<String> usual) {

  /** A field without a usual value. */
  public FieldSpec(FieldId id, String label, String spoken, FieldKind kind) {
    this(id, label, spoken, kind, Optional.empty());
  }

  /** The label with the unit of a measured field. */
  public String labelWithUnit() {
    return kind instanceof FieldKind.Measured m ? label + ", " + m.unit().symbol() : label;
  }
}
