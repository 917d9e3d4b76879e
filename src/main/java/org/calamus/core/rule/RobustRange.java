package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.form.Range;
import org.calamus.core.record.FieldId;

/**
 * What is usual of a measure in the station's own records: it is moved little by single wrong ones.
 *
 * @param median the middle amount
 * @param deviation the median of the amounts' distances from the median
 * @param count how many amounts it rests on, 30 or more
 * @param usual amounts outside this are asked about
 */
public record RobustRange(BigDecimal median, BigDecimal deviation, int count, Range usual) {

  /** The fewest records that a range is made of. Common practice, no published source. */
  public static final int FEWEST = 30;

  /** Makes the deviation comparable to a standard deviation: 1 / 0.6745 of a normal spread. */
  private static final BigDecimal CONSISTENCY = new BigDecimal("1.4826");

  /** How many such deviations are usual. Common practice, no published source. */
  private static final BigDecimal DEVIATIONS = BigDecimal.valueOf(4);

  /** The least half-widths in millimetres. Common practice, no published source. */
  private static final Map<FieldId, BigDecimal> LEAST =
      Map.of(
          FieldId.WING, new BigDecimal("3"),
          FieldId.TAIL, new BigDecimal("4"),
          FieldId.TARSUS, new BigDecimal("0.6"),
          FieldId.CULMEN, new BigDecimal("0.6"));

  /** The least half-width of masses, as a part of the median. Common practice, likewise. */
  private static final BigDecimal LEAST_OF_MASS = new BigDecimal("0.15");

  private static final BigDecimal TWO = BigDecimal.valueOf(2);

  /**
   * The range of a measure.
   *
   * @param field the measured field
   * @param amounts the records' amounts in the field's unit, in any order
   * @return empty where there are fewer than {@link #FEWEST}
   */
  public static Optional<RobustRange> of(FieldId field, List<BigDecimal> amounts) {
    if (amounts.size() < FEWEST) {
      return Optional.empty();
    }
    BigDecimal median = median(amounts);
    BigDecimal deviation = median(amounts.stream().map(a -> a.subtract(median).abs()).toList());
    BigDecimal half =
        deviation.multiply(CONSISTENCY).multiply(DEVIATIONS).max(least(field, median));
    Range usual = new Range(median.subtract(half), median.add(half));
    return Optional.of(new RobustRange(median, deviation, amounts.size(), usual));
  }

  private static BigDecimal least(FieldId field, BigDecimal median) {
    return field == FieldId.MASS
        ? median.abs().multiply(LEAST_OF_MASS)
        : LEAST.getOrDefault(field, BigDecimal.ZERO);
  }

  /** The middle amount, or exactly half way between the two in the middle. */
  static BigDecimal median(List<BigDecimal> amounts) {
    List<BigDecimal> sorted = amounts.stream().sorted().toList();
    int middle = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(middle)
        : sorted.get(middle - 1).add(sorted.get(middle)).divide(TWO);
  }
}
