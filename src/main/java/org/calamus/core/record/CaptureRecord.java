package org.calamus.core.record;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * One bird in the hand: what is known of it so far. Immutable; fields are added by copies.
 *
 * @param id the store's number for the record, from 1
 * @param capturedAt when the record was begun (UTC)
 * @param place the station
 * @param bander the initials of the bander
 * @param entries the accepted values by field
 */
public record CaptureRecord(
    long id, Instant capturedAt, String place, String bander, Map<FieldId, Entry> entries) {

  /** Copies the map in the fields' order. */
  public CaptureRecord {
    Objects.requireNonNull(capturedAt);
    Objects.requireNonNull(place);
    Objects.requireNonNull(bander);
    Map<FieldId, Entry> copy = new EnumMap<>(FieldId.class);
    copy.putAll(entries);
    entries = Collections.unmodifiableMap(copy);
  }

  /** The accepted value of a field with its history, or empty. */
  public Optional<Entry> entry(FieldId field) {
    return Optional.ofNullable(entries.get(field));
  }

  /** The accepted value of a field, or empty. */
  public Optional<FieldValue> value(FieldId field) {
    return entry(field).map(Entry::value);
  }

  /** The amount of a measured field, or empty. */
  public Optional<java.math.BigDecimal> amount(FieldId field) {
    return value(field)
        .flatMap(
            v -> v instanceof FieldValue.Measure m ? Optional.of(m.amount()) : Optional.empty());
  }

  /** The code of a coded field, or empty. */
  public Optional<String> code(FieldId field) {
    return value(field)
        .flatMap(v -> v instanceof FieldValue.Code c ? Optional.of(c.code()) : Optional.empty());
  }

  /** When the bird was caught. */
  public Caught caught() {
    return Caught.of(capturedAt, this::value);
  }

  /** The kind of capture; a new band where nothing else was said. */
  public CaptureKind kind() {
    return code(FieldId.KIND).flatMap(CaptureKind::ofCode).orElse(CaptureKind.NEW);
  }

  /** The band number, or empty. */
  public Optional<BandNumber> band() {
    return band(FieldId.BAND);
  }

  /** The band number of a field, or empty. */
  public Optional<BandNumber> band(FieldId field) {
    return value(field).flatMap(v -> v instanceof BandNumber b ? Optional.of(b) : Optional.empty());
  }

  /** The codes of a field that may hold several; none where it is empty. */
  public List<String> codes(FieldId field) {
    return value(field)
        .map(v -> v instanceof FieldValue.Codes c ? c.codes() : List.of(v.text()))
        .orElse(List.of());
  }

  /** A copy in which the field holds the entry. */
  public CaptureRecord with(FieldId field, Entry entry) {
    Map<FieldId, Entry> changed = new EnumMap<>(FieldId.class);
    changed.putAll(entries);
    changed.put(field, entry);
    return new CaptureRecord(id, capturedAt, place, bander, changed);
  }

  /** A copy in which the field is empty. */
  public CaptureRecord without(FieldId field) {
    Map<FieldId, Entry> changed = new EnumMap<>(FieldId.class);
    changed.putAll(entries);
    changed.remove(field);
    return new CaptureRecord(id, capturedAt, place, bander, changed);
  }
}
