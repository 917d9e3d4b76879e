package org.calamus.core.form;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The band sizes. Their names do not tell which is the larger (3B lies below 3A), their inside
 * diameters do.
 *
 * @param sizes in the table's order
 */
public record BandSizes(List<Size> sizes) {

  /** Copies the list. */
  public BandSizes {
    sizes = List.copyOf(sizes);
  }

  /**
   * One size.
   *
   * @param code as stored, such as {@code 1B}
   * @param digits as struck on a keypad
   * @param words as said, such as {@code one bravo}
   * @param inches the inside diameter in inches, which governs; empty where the bander cuts the
   *     band to size
   * @param millimetres about the same in millimetres; empty likewise
   * @param prefixDigits the last digits that a prefix of this size may have
   */
  public record Size(
      String code,
      String digits,
      String words,
      Optional<BigDecimal> inches,
      Optional<BigDecimal> millimetres,
      List<String> prefixDigits) {

    /** Copies the list and checks that the parts are there. */
    public Size {
      Objects.requireNonNull(code);
      Objects.requireNonNull(inches);
      Objects.requireNonNull(millimetres);
      prefixDigits = List.copyOf(prefixDigits);
    }
  }

  /** The size of a code. */
  public Optional<Size> size(String code) {
    return sizes.stream().filter(s -> s.code().equalsIgnoreCase(code)).findFirst();
  }

  /**
   * The sizes by their diameters in inches, those cut to size first; of one diameter in the table's
   * order.
   */
  public List<Size> byDiameter() {
    return sizes.stream().sorted(Comparator.comparing(BandSizes::order)).toList();
  }

  /**
   * The next larger size; of several with one diameter the first of the table. Empty for the
   * largest, for one that is cut to size, and for one that is not in the table.
   */
  public Optional<Size> larger(String code) {
    return diameter(code)
        .flatMap(
            d ->
                sizes.stream()
                    .filter(s -> s.inches().isPresent() && order(s).compareTo(d) > 0)
                    .min(Comparator.comparing(BandSizes::order)));
  }

  /** The next smaller size; else as {@link #larger}. */
  public Optional<Size> smaller(String code) {
    return diameter(code)
        .flatMap(
            d ->
                byDiameter().stream()
                    .filter(s -> s.inches().isPresent() && order(s).compareTo(d) < 0)
                    .reduce((a, b) -> order(b).compareTo(order(a)) > 0 ? b : a));
  }

  /**
   * The sizes that a band of this prefix may have, by the prefix's last digit. It is a question
   * where another size was given, and never a reason to refuse.
   *
   * @param prefix three or four digits
   */
  public List<Size> allowedBy(String prefix) {
    String last = prefix.substring(prefix.length() - 1);
    return sizes.stream().filter(s -> s.prefixDigits().contains(last)).toList();
  }

  /** The table as the codes of a field. */
  public CodeTable codes() {
    return new CodeTable(
        "band-size",
        sizes.stream().map(s -> new CodeTable.Row(s.code(), s.digits(), s.words())).toList());
  }

  private Optional<BigDecimal> diameter(String code) {
    return size(code).flatMap(Size::inches);
  }

  private static BigDecimal order(Size size) {
    return size.inches().orElse(BigDecimal.ZERO);
  }
}
