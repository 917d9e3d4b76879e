package org.calamus.core.rule;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.Range;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Unit;

/** Finds the slip of tongue or eye that most likely lies behind a wrong number. */
public final class Slips {

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  /** Exact by definition. Source: International yard and pound agreement, 1959. */
  private static final BigDecimal MILLIMETRES_IN_AN_INCH = new BigDecimal("25.4");

  /** How near a length in inches comes out at what was measured, in millimetres. */
  private static final BigDecimal NEAR = new BigDecimal("0.5");

  private Slips() {}

  /**
   * An amount that fits the range and differs from the given one by one slip, the likeliest first.
   */
  static Optional<BigDecimal> likely(BigDecimal amount, Range fits) {
    return named(amount, Unit.GRAM, fits).map(Slip::amount);
  }

  /**
   * The slip that would explain an amount outside a range, the likeliest first; empty where none
   * does.
   *
   * @param amount the doubtful amount, not below zero
   * @param unit the field's unit: only lengths can be in inches or centimetres
   * @param fits the range that the right amount is in
   */
  public static Optional<Slip> named(BigDecimal amount, Unit unit, Range fits) {
    return candidates(amount, unit, fits).stream()
        .filter(s -> s.amount().compareTo(amount) != 0)
        .filter(s -> fits.holds(s.amount()))
        .findFirst();
  }

  private static List<Slip> candidates(BigDecimal amount, Unit unit, Range fits) {
    List<Slip> slips = new ArrayList<>();
    String digits = amount.toPlainString();
    for (int i = 0; i + 1 < digits.length(); i++) {
      if (Character.isDigit(digits.charAt(i)) && Character.isDigit(digits.charAt(i + 1))) {
        add(slips, Slip.Kind.DIGITS_SWAPPED, new BigDecimal(swapped(digits, i)));
      }
    }
    boolean isLength = unit == Unit.MILLIMETRE;
    boolean hasPoint = digits.contains(".");
    add(
        slips,
        isLength && hasPoint ? Slip.Kind.CENTIMETRES : Slip.Kind.DECIMAL_POINT,
        plain(amount.movePointRight(1)));
    add(slips, Slip.Kind.DECIMAL_POINT, plain(amount.movePointLeft(1)));
    if (amount.compareTo(HUNDRED) < 0) {
      add(slips, Slip.Kind.HUNDRED_MISSING, amount.add(HUNDRED));
    }
    if (isLength) {
      inches(amount, fits).ifPresent(a -> add(slips, Slip.Kind.INCHES, a));
    }
    for (int i = 0; i < digits.length() && digits.length() > 1; i++) {
      String without = digits.substring(0, i) + digits.substring(i + 1);
      if (without.matches("\\d+(\\.\\d+)?") && Character.isDigit(digits.charAt(i))) {
        add(slips, Slip.Kind.DIGIT_TOO_MANY, new BigDecimal(without));
      }
    }
    return slips;
  }

  private static void add(List<Slip> slips, Slip.Kind kind, BigDecimal amount) {
    slips.add(new Slip(kind, amount));
  }

  /** The amount in millimetres, where it comes within half a millimetre of what fits. */
  private static Optional<BigDecimal> inches(BigDecimal amount, Range fits) {
    BigDecimal exact = amount.multiply(MILLIMETRES_IN_AN_INCH);
    Range near = new Range(fits.least().subtract(NEAR), fits.most().add(NEAR));
    if (!near.holds(exact)) {
      return Optional.empty();
    }
    BigDecimal rounded = exact.setScale(1, RoundingMode.HALF_EVEN);
    return Optional.of(rounded.max(fits.least()).min(fits.most()));
  }

  /**
   * The other fields whose range holds an amount that does not fit its own: it may belong there.
   *
   * @param amount the doubtful amount
   * @param own the field it was given for
   * @param ranges what fits each field
   */
  public static Set<FieldId> fieldsThatFit(
      BigDecimal amount, FieldId own, Map<FieldId, Range> ranges) {
    Set<FieldId> fields = EnumSet.noneOf(FieldId.class);
    ranges.forEach(
        (field, range) -> {
          if (field != own && range.holds(amount)) {
            fields.add(field);
          }
        });
    return fields;
  }

  /** Whether two texts differ by one swap of neighbours. */
  public static boolean isTransposed(String one, String other) {
    for (int i = 0; i + 1 < one.length(); i++) {
      if (!one.equals(other) && swapped(one, i).equals(other)) {
        return true;
      }
    }
    return false;
  }

  private static String swapped(String text, int at) {
    return text.substring(0, at) + text.charAt(at + 1) + text.charAt(at) + text.substring(at + 2);
  }

  private static BigDecimal plain(BigDecimal amount) {
    return amount.scale() < 0 ? amount.setScale(0) : amount;
  }
}
