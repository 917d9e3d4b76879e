package org.calamus.core.speech;

import java.util.List;
import java.util.Set;

/**
 * How unlike two pronunciations are: the least cost of turning the one into the other by putting
 * in, leaving out and replacing phones, as a share of the longer one.
 *
 * <p>The classes are those of the articulation of English (place, manner, voicing); the costs are
 * our own choice: they put "six" and "sexed", "nine" and "none" below the limit, which were heard
 * for each other in recordings. Costs are in tenths of a whole phone.
 */
final class PhoneDistance {

  private static final int WHOLE = 10;
  private static final int NEAR = 3;
  private static final int LIKE = 6;

  /** Phones that come and go in quick speech. */
  private static final int WEAK = 6;

  private static final Set<String> WEAK_PHONES = Set.of("AH", "D", "HH", "IH", "T");

  /** Consonants of one place and manner, voiced and not, and vowels that are neighbours. */
  private static final List<Set<String>> NEAR_CLASSES =
      List.of(
          Set.of("B", "P"),
          Set.of("D", "T"),
          Set.of("G", "K"),
          Set.of("V", "F"),
          Set.of("DH", "TH"),
          Set.of("Z", "S"),
          Set.of("ZH", "SH"),
          Set.of("JH", "CH"),
          Set.of("M", "N"),
          Set.of("N", "NG"),
          Set.of("TH", "F"),
          Set.of("IY", "IH"),
          Set.of("IH", "EH"),
          Set.of("EH", "AE"),
          Set.of("EH", "EY"),
          Set.of("AA", "AO"),
          Set.of("AA", "AH"),
          Set.of("AH", "UH"),
          Set.of("UH", "UW"),
          Set.of("AO", "OW"),
          Set.of("AW", "OW"),
          Set.of("AY", "AH"),
          Set.of("ER", "AH"));

  /** Phones of one manner. */
  private static final List<Set<String>> LIKE_CLASSES =
      List.of(
          Set.of("B", "D", "G", "K", "P", "T"),
          Set.of("DH", "F", "HH", "S", "SH", "TH", "V", "Z", "ZH"),
          Set.of("M", "N", "NG"),
          Set.of("L", "R", "W", "Y"),
          Set.of(
              "AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH", "IY", "OW", "OY", "UH",
              "UW"));

  /** The phones of the dictionary; a number stands for each, for speed. */
  private static final List<String> PHONES =
      List.of(
          ("AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH"
                  + " UW V W Y Z ZH")
              .split(" "));

  private static final int[] ALONE = PHONES.stream().mapToInt(PhoneDistance::alone).toArray();
  private static final int[][] REPLACING =
      PHONES.stream()
          .map(p -> PHONES.stream().mapToInt(q -> replacing(p, q)).toArray())
          .toArray(int[][]::new);

  private PhoneDistance() {}

  /** The numbers of phones; a phone that the dictionary does not use is left out. */
  static int[] numbers(List<String> phones) {
    return phones.stream().mapToInt(PHONES::indexOf).filter(n -> n >= 0).toArray();
  }

  /**
   * Hundredths of the longer pronunciation, 0 for the same; at least this much where the lengths
   * alone tell that it is more than a limit.
   *
   * @param one phones by {@link #numbers}, at least one
   * @param other the same
   * @param limit beyond which the very figure does not matter
   */
  static int hundredths(int[] one, int[] other, int limit) {
    int longer = Math.max(one.length, other.length);
    int least = 100 * WEAK * (longer - Math.min(one.length, other.length)) / (WHOLE * longer);
    return least > limit ? least : 100 * cost(one, other) / (WHOLE * longer);
  }

  private static int cost(int[] one, int[] other) {
    int[] before = new int[other.length + 1];
    for (int k = 1; k < before.length; k++) {
      before[k] = before[k - 1] + ALONE[other[k - 1]];
    }
    for (int phone : one) {
      int[] row = new int[before.length];
      row[0] = before[0] + ALONE[phone];
      for (int k = 1; k < row.length; k++) {
        int next = other[k - 1];
        int replaced = before[k - 1] + REPLACING[phone][next];
        int leftOut = before[k] + ALONE[phone];
        row[k] = Math.min(replaced, Math.min(leftOut, row[k - 1] + ALONE[next]));
      }
      before = row;
    }
    return before[other.length];
  }

  private static int alone(String phone) {
    return WEAK_PHONES.contains(phone) ? WEAK : WHOLE;
  }

  private static int replacing(String phone, String other) {
    if (phone.equals(other)) {
      return 0;
    }
    if (areTogether(phone, other, NEAR_CLASSES)) {
      return NEAR;
    }
    return areTogether(phone, other, LIKE_CLASSES) ? LIKE : WHOLE;
  }

  private static boolean areTogether(String phone, String other, List<Set<String>> classes) {
    return classes.stream().anyMatch(c -> c.contains(phone) && c.contains(other));
  }
}
