package org.calamus.core.form;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * The fields that a station records, and for each kind of capture which of them it asks, in which
 * order.
 *
 * @param fields the fields in the order in which they are numbered and shown; none twice
 * @param asks what is asked, by kind; a kind that is not in it cannot be recorded
 */
public record Form(List<FieldSpec> fields, Map<CaptureKind, List<Ask>> asks) {

  /** How much a kind of capture wants a field. */
  public enum Need {
    /** Asked, and the record is not complete without. */
    REQUIRED,
    /** Asked in its turn. */
    ASKED,
    /** Never asked; taken where it is named. */
    BY_NAME
  }

  /**
   * A field as a kind of capture wants it.
   *
   * @param field the field
   * @param need how much
   */
  public record Ask(FieldId field, Need need) {}

  /** Copies the collections and checks that no field stands twice and that every one is known. */
  public Form {
    fields = List.copyOf(fields);
    if (fields.stream().map(FieldSpec::id).distinct().count() != fields.size()) {
      throw new IllegalArgumentException("a field stands twice in the form");
    }
    Map<CaptureKind, List<Ask>> copy = new EnumMap<>(CaptureKind.class);
    asks.forEach((kind, list) -> copy.put(kind, List.copyOf(list)));
    for (List<Ask> list : copy.values()) {
      for (Ask ask : list) {
        spec(fields, ask.field());
      }
    }
    asks = java.util.Collections.unmodifiableMap(copy);
  }

  /** A form whose fields are asked in their order for every kind of capture. */
  public static Form ofAll(List<FieldSpec> fields, java.util.Set<FieldId> required) {
    List<Ask> asks =
        fields.stream()
            .map(f -> new Ask(f.id(), required.contains(f.id()) ? Need.REQUIRED : Need.ASKED))
            .toList();
    Map<CaptureKind, List<Ask>> all = new EnumMap<>(CaptureKind.class);
    for (CaptureKind kind : CaptureKind.values()) {
      all.put(kind, asks);
    }
    return new Form(fields, all);
  }

  /** Whether the station records the field. */
  public boolean has(FieldId id) {
    return fields.stream().anyMatch(f -> f.id() == id);
  }

  /** Whether the station records this kind of capture. */
  public boolean has(CaptureKind kind) {
    return asks.containsKey(kind);
  }

  /**
   * The field's specification.
   *
   * @throws IllegalArgumentException where the form does not have the field
   */
  public FieldSpec spec(FieldId id) {
    return spec(fields, id);
  }

  private static FieldSpec spec(List<FieldSpec> fields, FieldId id) {
    return fields.stream()
        .filter(f -> f.id() == id)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("not in the form: " + id));
  }

  /** The field that is asked first where nothing is known yet. */
  public FieldId first() {
    return asked(CaptureKind.NEW).get(0);
  }

  /** How much the record's kind of capture wants a field; empty where it has no place in it. */
  public Optional<Need> need(CaptureKind kind, FieldId field) {
    return asks.getOrDefault(kind, List.of()).stream()
        .filter(a -> a.field() == field)
        .map(Ask::need)
        .findFirst();
  }

  /** The fields that are asked in turn for a kind of capture. */
  public List<FieldId> asked(CaptureKind kind) {
    return asks.getOrDefault(kind, List.of()).stream()
        .filter(a -> a.need() != Need.BY_NAME)
        .map(Ask::field)
        .toList();
  }

  /**
   * The fields to show of a record: those asked for its kind, and those that hold a value.
   *
   * @param record the record
   */
  public List<FieldSpec> shown(CaptureRecord record) {
    List<FieldId> asked = asked(record.kind());
    List<FieldId> all =
        asks.getOrDefault(record.kind(), List.of()).stream()
            .map(Ask::field)
            .filter(f -> asked.contains(f) || record.entry(f).isPresent())
            .toList();
    List<FieldSpec> shown = new java.util.ArrayList<>(all.stream().map(this::spec).toList());
    fields.stream()
        .filter(f -> !all.contains(f.id()) && record.entry(f.id()).isPresent())
        .forEach(shown::add);
    return shown;
  }

  /** The first field behind the given one that is asked and has no value; then from the start. */
  public Optional<FieldId> nextEmpty(CaptureRecord record, FieldId from) {
    List<FieldId> asked = asked(record.kind());
    int start = Math.max(asked.indexOf(from), 0);
    for (int i = 0; i < asked.size(); i++) {
      FieldId id = asked.get((start + i) % asked.size());
      if (record.entry(id).isEmpty()) {
        return Optional.of(id);
      }
    }
    return Optional.empty();
  }

  /** The first field behind the given one that is asked and has no value; none from the start. */
  public Optional<FieldId> behind(CaptureRecord record, FieldId from) {
    List<FieldId> asked = asked(record.kind());
    return asked.subList(asked.indexOf(from) + 1, asked.size()).stream()
        .filter(f -> record.entry(f).isEmpty())
        .findFirst();
  }

  /**
   * The required fields that have no value. A bird that was let go before its time, escaped or died
   * is complete as it is; what is wrong with a bird wants a remark (Bird Banding Laboratory,
   * "Status and Additional Information Codes": status 5, remarks required).
   */
  public List<FieldSpec> missing(CaptureRecord record) {
    boolean isCutShort =
        record.code(FieldId.RELEASE).filter(r -> !r.equals(Release.RELEASED.name())).isPresent();
    boolean needsNote =
        record.entry(FieldId.DISPOSITION).isPresent()
            || record.code(FieldId.STATUS).filter(s -> s.startsWith("5")).isPresent()
            || record.code(FieldId.RELEASE).filter(Release.DIED.name()::equals).isPresent();
    return fields.stream()
        .filter(f -> record.entry(f.id()).isEmpty())
        .filter(
            f ->
                f.id() == FieldId.NOTE && needsNote
                    || !isCutShort
                        && need(record.kind(), f.id()).filter(n -> n == Need.REQUIRED).isPresent())
        .toList();
  }
}
