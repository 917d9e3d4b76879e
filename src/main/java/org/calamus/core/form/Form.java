package org.calamus.core.form;

import java.util.List;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * The fields that a station records, in the order in which they are asked.
 *
 * @param fields the fields; none twice
 */
public record Form(List<FieldSpec> fields) {

  /** Copies the list and checks that no field stands twice. */
  public Form {
    fields = List.copyOf(fields);
    if (fields.stream().map(FieldSpec::id).distinct().count() != fields.size()) {
      throw new IllegalArgumentException("a field stands twice in the form");
    }
  }

  /**
   * The field's specification.
   *
   * @throws IllegalArgumentException where the form does not have the field
   */
  public FieldSpec spec(FieldId id) {
    return fields.stream()
        .filter(f -> f.id() == id)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("not in the form: " + id));
  }

  /** The first field from the given one on that has no value yet; then from the start. */
  public Optional<FieldId> nextEmpty(CaptureRecord record, FieldId from) {
    int start = fields.indexOf(spec(from));
    for (int i = 0; i < fields.size(); i++) {
      FieldId id = fields.get((start + i) % fields.size()).id();
      if (record.entry(id).isEmpty()) {
        return Optional.of(id);
      }
    }
    return Optional.empty();
  }

  /** The required fields that have no value. */
  public List<FieldSpec> missing(CaptureRecord record) {
    return fields.stream().filter(f -> f.isRequired() && record.entry(f.id()).isEmpty()).toList();
  }
}
