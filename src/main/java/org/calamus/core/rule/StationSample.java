package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * The measures in the station's saved records, by species and sex. Immutable. Values that a rule
 * had doubted are left out: a doubtful amount must not widen the range that doubts it.
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

  /** The sample of many captures, quicker than one at a time. */
  public static StationSample of(List<PastCapture> captures) {
    Map<Key, List<BigDecimal>> all = new HashMap<>();
    captures.forEach(c -> add(c, all));
    return frozen(all);
  }

  /** The sample with one more capture; one without species or sex adds nothing. */
  public StationSample with(PastCapture capture) {
    Map<Key, List<BigDecimal>> one = new HashMap<>();
    add(capture, one);
    return joined(one);
  }

  /** The sample without a capture that is in it, as where its record was corrected. */
  public StationSample without(PastCapture capture) {
    Map<Key, List<BigDecimal>> one = new HashMap<>();
    add(capture, one);
    Map<Key, List<BigDecimal>> all = new HashMap<>(amounts);
    one.forEach(
        (key, gone) -> {
          List<BigDecimal> left = new ArrayList<>(all.getOrDefault(key, List.of()));
          gone.forEach(left::remove);
          if (left.isEmpty()) {
            all.remove(key);
          } else {
            all.put(key, List.copyOf(left));
          }
        });
    return new StationSample(all);
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
          all.put(key, sorted(joined));
        });
    return new StationSample(all);
  }

  private static StationSample frozen(Map<Key, List<BigDecimal>> all) {
    all.replaceAll((key, list) -> sorted(list));
    return new StationSample(all);
  }

  /** In order, so that whoever looks for a bird's place among them need not sort. */
  private static List<BigDecimal> sorted(List<BigDecimal> amounts) {
    return amounts.stream().sorted().toList();
  }

  /** A doubtful species or sex would put the measures where they do not belong. */
  private static void add(PastCapture capture, Map<Key, List<BigDecimal>> to) {
    Optional<String> species = certain(capture, FieldId.SPECIES);
    Optional<String> sex = certain(capture, FieldId.SEX);
    if (species.isEmpty() || sex.isEmpty()) {
      return;
    }
    for (FieldId field : MEASURES) {
      if (!capture.doubted().contains(field)) {
        Key key = new Key(species.get(), sex.get(), field);
        capture
            .amount(field)
            .ifPresent(a -> to.computeIfAbsent(key, k -> new ArrayList<>()).add(a));
      }
    }
  }

  private static Optional<String> certain(PastCapture capture, FieldId field) {
    return capture.code(field).filter(code -> !capture.doubted().contains(field));
  }

  /** What is usual of a measure; empty where the sample has fewer than thirty of it. */
  public Optional<RobustRange> range(String species, String sex, FieldId field) {
    return RobustRange.of(field, amounts(species, sex, field));
  }

  /**
   * The amounts of a measure, smallest first.
   *
   * @param species the species code
   * @param sex the sex code
   * @param field the measured field
   * @return empty where there are none
   */
  public List<BigDecimal> amounts(String species, String sex, FieldId field) {
    return amounts.getOrDefault(new Key(species, sex, field), List.of());
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
