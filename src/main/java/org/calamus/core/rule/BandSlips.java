package org.calamus.core.rule;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.calamus.core.record.BandNumber;

/** The slips of tongue or eye that turn one band number into another. Common practice. */
final class BandSlips {

  private BandSlips() {}

  /** What a slip would have done to a number, in words; empty where more than one is needed. */
  static Optional<String> between(BandNumber given, BandNumber meant) {
    String one = given.prefix() + given.suffix();
    String other = meant.prefix() + meant.suffix();
    if (Slips.isTransposed(one, other)) {
      return Optional.of("two digits swapped");
    }
    if (one.length() == other.length()) {
      return differing(one, other) == 1 ? Optional.of("one digit wrong") : Optional.empty();
    }
    if (isWithoutOne(other, one)) {
      return Optional.of("one digit dropped");
    }
    return isWithoutOne(one, other) ? Optional.of("one digit too many") : Optional.empty();
  }

  /** The first of some bands from which one slip leads to the given number, with the slip. */
  static String behind(BandNumber given, List<BandNumber> expected) {
    return expected.stream()
        .flatMap(
            e -> between(given, e).map(s -> "; " + s + "? " + e.text() + " would fit").stream())
        .findFirst()
        .orElse("");
  }

  /**
   * The one number that differs by a swap or by one digit and is as wanted; empty where several.
   */
  static Optional<BandNumber> oneSlipAway(BandNumber given, Predicate<BandNumber> isWanted) {
    Set<String> texts = new LinkedHashSet<>();
    String text = given.prefix() + given.suffix();
    for (int i = 0; i < text.length(); i++) {
      if (Character.isDigit(text.charAt(i))) {
        for (char digit = '0'; digit <= '9'; digit++) {
          texts.add(text.substring(0, i) + digit + text.substring(i + 1));
        }
      }
      if (i + 1 < text.length()) {
        texts.add(
            text.substring(0, i) + text.charAt(i + 1) + text.charAt(i) + text.substring(i + 2));
      }
    }
    List<BandNumber> wanted =
        texts.stream()
            .flatMap(t -> BandNumber.parse(t).stream())
            .filter(b -> !b.equals(given))
            .filter(isWanted)
            .toList();
    return wanted.size() == 1 ? Optional.of(wanted.get(0)) : Optional.empty();
  }

  private static int differing(String one, String other) {
    int count = 0;
    for (int i = 0; i < one.length(); i++) {
      count += one.charAt(i) == other.charAt(i) ? 0 : 1;
    }
    return count;
  }

  /** Whether the longer text is the shorter one with one more character in it. */
  private static boolean isWithoutOne(String longer, String shorter) {
    if (longer.length() != shorter.length() + 1) {
      return false;
    }
    for (int i = 0; i < longer.length(); i++) {
      if ((longer.substring(0, i) + longer.substring(i + 1)).equals(shorter)) {
        return true;
      }
    }
    return false;
  }
}
