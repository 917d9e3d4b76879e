package org.calamus.core.record;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The number of a bird band: a prefix of three or four digits and a suffix of five.
 *
 * <p>Bands come in strings of one hundred; the first of a string ends in 01, the last in 00.
 * Source: U.S. Geological Survey, Bird Banding Laboratory, North American Bird Banding Manual, page
 * "Band numbers".
 *
 * @param prefix three or four digits; the last tells the size group
 * @param suffix five digits
 */
public record BandNumber(String prefix, String suffix)
    implements FieldValue, Comparable<BandNumber> {

  private static final Pattern TEXT = Pattern.compile("(\\d{3,4})-?(\\d{5})");
  private static final int SUFFIXES = 100_000;
  private static final int STRING_LENGTH = 100;

  /** Checks the two parts. */
  public BandNumber {
    if (!prefix.matches("\\d{3,4}") || !suffix.matches("\\d{5}")) {
      throw new IllegalArgumentException("not a band number: " + prefix + "-" + suffix);
    }
  }

  /**
   * Reads a number of eight or nine digits, with or without the hyphen.
   *
   * @param text for example {@code 2841-55601} or {@code 284155601}
   * @return the number, or empty where the text has another form
   */
  public static Optional<BandNumber> parse(String text) {
    Matcher m = TEXT.matcher(text);
    return m.matches() ? Optional.of(new BandNumber(m.group(1), m.group(2))) : Optional.empty();
  }

  /** The number of the band that follows on the string; 99999 is followed by 00000, the last. */
  public BandNumber successor() {
    return new BandNumber(prefix, fiveDigits((suffixNumber() + 1) % SUFFIXES));
  }

  /** Whether no band of this prefix follows: its suffix is 00000. */
  public boolean isLastOfPrefix() {
    return suffixNumber() == 0;
  }

  /** Where the band sits in its string of one hundred: 1 for suffix ..01, 100 for suffix ..00. */
  public int positionInString() {
    return (ordinal() - 1) % STRING_LENGTH + 1;
  }

  /** The first band of the string this one belongs to. */
  public BandNumber firstOfString() {
    return new BandNumber(prefix, fiveDigits(ordinal() - positionInString() + 1));
  }

  /**
   * The number with its last digits replaced.
   *
   * @param digits one to five digits
   */
  public BandNumber endingIn(String digits) {
    return new BandNumber(prefix, suffix.substring(0, suffix.length() - digits.length()) + digits);
  }

  /** Prefix, hyphen, suffix. */
  @Override
  public String text() {
    return prefix + "-" + suffix;
  }

  /** Orders by prefix, then along the strings (suffix 00000 comes last of its prefix). */
  @Override
  public int compareTo(BandNumber other) {
    int byPrefix = prefix.compareTo(other.prefix);
    return byPrefix != 0 ? byPrefix : Integer.compare(ordinal(), other.ordinal());
  }

  private int suffixNumber() {
    return Integer.parseInt(suffix);
  }

  private int ordinal() {
    return suffixNumber() == 0 ? SUFFIXES : suffixNumber();
  }

  private static String fiveDigits(int number) {
    String digits = Integer.toString(number % SUFFIXES);
    return "0".repeat(5 - digits.length()) + digits;
  }
}
