package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * The measures in the station's saved records, by species and sex. Immutable. Records with an open
 * question are not to be given: a doubtful amount must not widen the range that doubts it.
 */
public final class StationSample {

  private static final List<FieldId> MEASURES =
      List.of(FieldId.WING, FieldId.TAIL, FieldId.TARSUS, FieldId.CULMEN, FieldId.MASS);

  private static final StationSample EMPTY = new StationSample(Map.of());

  private final Map<Key, List<BigDecimal>> amounts;

  private StationSample(Map<Key, List<BigDecimal>> amounts) {
    this.amounts = amounts;
  }

  private record Key(String species, String sex, FieldId field) {}

  /** A sample of no record. */
  public static StationSample empty() {
    return EMPTY;
  }

  /** The sample of many records, quicker than one at a time. */
  public static StationSample of(List<CaptureRecord> records) {
    Map<Key, List<BigDecimal>> all = new HashMap<>();
    records.forEach(r -> add(r, all));
    return frozen(all);
  }

  /** The sample with one more record; one without species or sex adds nothing. */
  public StationSample with(CaptureRecord record) {
    Map<Key, List<BigDecimal>> one = new HashMap<>();
    add(record, one);
    return joined(one);
  }

  /**
   * The sample with one more amount.
   *
   * @param species the species code
   * @param sex the sex code
   * @param field the measured field
   * @param amount in the field's unit
   */
  public StationSample with(String species, String sex, FieldId field, BigDecimal amount) {
    return joined(Map.of(new Key(species, sex, field), List.of(amount)));
  }

  private StationSample joined(Map<Key, List<BigDecimal>> more) {
    Map<Key, List<BigDecimal>> all = new HashMap<>(amounts);
    more.forEach(
        (key, added) -> {
          List<BigDecimal> joined = new ArrayList<>(all.getOrDefault(key, List.of()));
          joined.addAll(added);
          all.put(key, List.copyOf(joined));
        });
    return new StationSample(all);
  }

  private static StationSample frozen(Map<Key, List<BigDecimal>> all) {
    all.replaceAll((key, list) -> List.copyOf(list));
    return new StationSample(all);
  }

  private static void add(CaptureRecord record, Map<Key, List<BigDecimal>> to) {
    Optional<String> species = record.code(FieldId.SPECIES);
    Optional<String> sex = record.code(FieldId.SEX);
    if (species.isEmpty() || sex.isEmpty()) {
      return;
    }
    for (FieldId field : MEASURES) {
      Key key = new Key(species.get(), sex.get(), field);
      record.amount(field).ifPresent(a -> to.computeIfAbsent(key, k -> new ArrayList<>()).add(a));
    }
  }

  /** What is usual of a measure; empty where the sample has fewer than thirty of it. */
  public Optional<RobustRange> range(String species, String sex, FieldId field) {
    return RobustRange.of(field, amounts.getOrDefault(new Key(species, sex, field), List.of()));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof StationSample o && amounts.equals(o.amounts);
  }

  @Override
  public int hashCode() {
    return Objects.hash(amounts);
  }
}
