package org.calamus.benchmark;

import java.util.Locale;

/**
 * The range in which a share lies with a probability of 95 %, by Wilson's score (E. B. Wilson,
 * 1927): right for small numbers too, and for shares near 0 and 1.
 *
 * @param least the lower end, 0 to 1
 * @param most the upper end, 0 to 1
 */
record Wilson(double least, double most) {

  private static final double Z = 1.959964;

  /** The range for so many of so many; everything for none of none. */
  static Wilson of(int some, int all) {
    if (all == 0) {
      return new Wilson(0, 1);
    }
    double share = (double) some / all;
    double z2 = Z * Z / all;
    double middle = share + z2 / 2;
    double span = Z * Math.sqrt(share * (1 - share) / all + z2 / (4 * all));
    return new Wilson(
        Math.max(0, (middle - span) / (1 + z2)), Math.min(1, (middle + span) / (1 + z2)));
  }

  /** Whether the two have nothing in common. */
  boolean isApartFrom(Wilson other) {
    return least > other.most || other.least > most;
  }

  /** A share with its range, in hundredths. */
  static String text(int some, int all) {
    Wilson range = of(some, all);
    return String.format(
        Locale.ROOT,
        "%.1f (%.1f-%.1f)",
        100.0 * some / Math.max(1, all),
        100 * range.least,
        100 * range.most);
  }
}
