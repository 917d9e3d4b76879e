package org.calamus.core.record;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * A saved record as history wants it: its values without how they came in, so that tens of
 * thousands of them can be held. Immutable.
 *
 * @param id the store's number for the record, from 1
 * @param capturedAt when the record was begun (UTC)
 * @param place the station
 * @param bander the initials of the bander
 * @param values the values by field
 * @param doubted the fields whose value a rule had doubted and the bander confirmed
 */
public record PastCapture(
    long id,
    Instant capturedAt,
    String place,
    String bander,
    Map<FieldId, FieldValue> values,
    Set<FieldId> doubted) {

  /** Copies the collections, in the fields' order. */
  public PastCapture {
    Objects.requireNonNull(capturedAt);
    Objects.requireNonNull(place);
    Objects.requireNonNull(bander);
    Map<FieldId, FieldValue> copy = new EnumMap<>(FieldId.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
    doubted = Set.copyOf(doubted);
    if (!values.keySet().containsAll(doubted)) {
      throw new IllegalArgumentException("doubted without a value: " + doubted);
    }
  }

  /** What stays of a record. */
  public static PastCapture of(CaptureRecord record) {
    Map<FieldId, FieldValue> values = new EnumMap<>(FieldId.class);
    Set<FieldId> doubted = EnumSet.noneOf(FieldId.class);
    record
        .entries()
        .forEach(
            (field, entry) -> {
              values.put(field, entry.value());
              if (entry.isConfirmedDoubt()) {
                doubted.add(field);
              }
            });
    return new PastCapture(
        record.id(), record.capturedAt(), record.place(), record.bander(), values, doubted);
  }

  /** The value of a field, or empty. */
  public Optional<FieldValue> value(FieldId field) {
    return Optional.ofNullable(values.get(field));
  }

  /** The amount of a measured field, or empty. */
  public Optional<BigDecimal> amount(FieldId field) {
    return value(field)
        .flatMap(
            v -> v instanceof FieldValue.Measure m ? Optional.of(m.amount()) : Optional.empty());
  }

  /** The code of a field with one code, or empty. */
  public Optional<String> code(FieldId field) {
    return value(field)
        .flatMap(v -> v instanceof FieldValue.Code c ? Optional.of(c.code()) : Optional.empty());
  }

  /** The kind of capture; a new band where nothing else was said. */
  public CaptureKind kind() {
    return code(FieldId.KIND).flatMap(CaptureKind::ofCode).orElse(CaptureKind.NEW);
  }

  /** The number of the band that the bird wore when it went, or empty. */
  public Optional<BandNumber> band() {
    return number(FieldId.BAND);
  }

  /** When the bird was caught. */
  public Caught caught() {
    return Caught.of(capturedAt, this::value);
  }

  /** The date of the capture where the clocks show this zone's time. */
  public LocalDate day(ZoneId zone) {
    return caught().day(zone);
  }

  /** The numbers that the bird came or went with: none, one or two. */
  Set<BandNumber> bands() {
    Set<BandNumber> all = new LinkedHashSet<>();
    for (FieldId field : List.of(FieldId.OLD_BAND, FieldId.BAND)) {
      number(field).ifPresent(all::add);
    }
    return all;
  }

  private Optional<BandNumber> number(FieldId field) {
    return value(field).flatMap(v -> v instanceof BandNumber b ? Optional.of(b) : Optional.empty());
  }
}
