package org.calamus.core.record;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The number of a bird band, in two parts: what stays the same along its strings, and the digits
 * that count.
 *
 * <p>The ordinary band has a prefix of three or four digits and a suffix of five. Bands come in
 * strings of one hundred; the first of a string ends in 01, the last in 00. A hummingbird's band
 * has one letter and five digits. Source: U.S. Geological Survey, Bird Banding Laboratory, North
 * American Bird Banding Manual, page "Band numbers".
 *
 * <p>Rings of other schemes have up to ten letters and digits (EURING Exchange Code 2000+). Here
 * their suffix is the digits behind the last letter, all of them where there is no letter.
 *
 * @param prefix three or four digits, of which the last tells the size group; or capital letters
 *     and digits that end in a letter; or nothing, for a ring of another scheme that is all digits
 * @param suffix the digits that count: five behind a prefix of digits
 */
public record BandNumber(String prefix, String suffix)
    implements FieldValue, Comparable<BandNumber> {

  private static final Pattern ORDINARY_PREFIX = Pattern.compile("\\d{3,4}");
  private static final Pattern ORDINARY_SUFFIX = Pattern.compile("\\d{5}");
  private static final Pattern LETTERED_PREFIX = Pattern.compile("[A-Z0-9]*[A-Z]");
  private static final Pattern LETTERED_SUFFIX = Pattern.compile("\\d+");
  private static final Pattern DIGITS = Pattern.compile("(\\d{3,4})-?(\\d{5})");
  private static final Pattern LETTERS = Pattern.compile("([A-Z0-9]*[A-Z])-?(\\d+)");
  private static final Pattern OTHER_DIGITS = Pattern.compile("\\d{4,7}|\\d{10}");
  private static final int LONGEST = 10;
  private static final int STRING_LENGTH = 100;
  private static final int SAID_ALOUD = 3;

  /** Checks the two parts. */
  public BandNumber {
    boolean isOrdinary =
        ORDINARY_PREFIX.matcher(prefix).matches() && ORDINARY_SUFFIX.matcher(suffix).matches();
    boolean isLettered =
        LETTERED_PREFIX.matcher(prefix).matches()
            && LETTERED_SUFFIX.matcher(suffix).matches()
            && prefix.length() + suffix.length() <= LONGEST;
    boolean isAllDigits = prefix.isEmpty() && OTHER_DIGITS.matcher(suffix).matches();
    if (!isOrdinary && !isLettered && !isAllDigits) {
      throw new IllegalArgumentException("not a band number: " + prefix + "-" + suffix);
    }
  }

  /**
   * Reads a number of eight or nine digits, or one with letters, with or without the hyphen. Digits
   * of another length are not taken, since a digit is easily missed: see {@link #ofOtherScheme}.
   *
   * @param text for example {@code 2841-55601}, {@code 284155601}, {@code X12345}
   * @return the number, or empty where the text has another form
   */
  public static Optional<BandNumber> parse(String text) {
    String upper = text.toUpperCase(Locale.ROOT);
    Matcher digits = DIGITS.matcher(upper);
    Matcher letters = LETTERS.matcher(upper);
    if (digits.matches()) {
      return Optional.of(new BandNumber(digits.group(1), digits.group(2)));
    }
    return letters.matches() && letters.group(1).length() + letters.group(2).length() <= LONGEST
        ? Optional.of(new BandNumber(letters.group(1), letters.group(2)))
        : Optional.empty();
  }

  /**
   * Reads the number of a ring that another scheme may have issued: as {@link #parse} does, and
   * also four to seven digits, or ten.
   *
   * @param text the characters on the ring; the dots with which files fill them up are passed over
   * @return the number, or empty where no scheme has such a one
   */
  public static Optional<BandNumber> ofOtherScheme(String text) {
    String characters = text.replace(".", "");
    return OTHER_DIGITS.matcher(characters).matches()
        ? Optional.of(new BandNumber("", characters))
        : parse(characters);
  }

  /** The number of the band that follows on the string; 99999 is followed by 00000, the last. */
  public BandNumber successor() {
    return withOrdinal(isLastOfPrefix() ? 1 : ordinal() + 1);
  }

  /** Whether no band of this prefix follows: its suffix is all zeros. */
  public boolean isLastOfPrefix() {
    return ordinal() == size();
  }

  /** Where the band sits in its string of one hundred: 1 for suffix ..01, 100 for suffix ..00. */
  public int positionInString() {
    return (int) ((ordinal() - 1) % STRING_LENGTH) + 1;
  }

  /** The first band of the string this one belongs to. */
  public BandNumber firstOfString() {
    return withOrdinal(ordinal() - positionInString() + 1);
  }

  /** The last band of the string this one belongs to. */
  public BandNumber lastOfString() {
    return withOrdinal(Math.min(size(), ordinal() - positionInString() + STRING_LENGTH));
  }

  /** The last band of the prefix, whose suffix is all zeros. */
  public BandNumber lastOfPrefix() {
    return withOrdinal(size());
  }

  /** Whether both bands have the same prefix and as many counting digits. */
  public boolean isOfSeriesOf(BandNumber other) {
    return prefix.equals(other.prefix) && suffix.length() == other.suffix.length();
  }

  /** The band's place among those of its prefix: 1 for 00001, 100000 for 00000. */
  public long ordinal() {
    long number = Long.parseLong(suffix);
    return number == 0 ? size() : number;
  }

  /**
   * The band of the same prefix at a place.
   *
   * @param ordinal 1 or more, and no more than the counting digits can tell
   */
  public BandNumber withOrdinal(long ordinal) {
    if (ordinal < 1 || ordinal > size()) {
      throw new IllegalArgumentException("no band " + ordinal + " of prefix " + prefix);
    }
    String digits = Long.toString(ordinal % size());
    return new BandNumber(prefix, "0".repeat(suffix.length() - digits.length()) + digits);
  }

  /**
   * The number with its last digits replaced.
   *
   * @param digits one or more digits, no more than the suffix has
   */
  public BandNumber endingIn(String digits) {
    return new BandNumber(prefix, suffix.substring(0, suffix.length() - digits.length()) + digits);
  }

  /** The last three digits, by which a band is told at the table; all, where it has fewer. */
  public String lastDigits() {
    return suffix.substring(Math.max(0, suffix.length() - SAID_ALOUD));
  }

  /** Prefix, hyphen, suffix; without the hyphen where the prefix is not of digits. */
  @Override
  public String text() {
    return prefix + (ORDINARY_PREFIX.matcher(prefix).matches() ? "-" : "") + suffix;
  }

  /** Orders by prefix, then along the strings (a suffix of zeros comes last of its prefix). */
  @Override
  public int compareTo(BandNumber other) {
    int byPrefix = prefix.compareTo(other.prefix);
    int byLength = Integer.compare(suffix.length(), other.suffix.length());
    if (byPrefix != 0 || byLength != 0) {
      return byPrefix != 0 ? byPrefix : byLength;
    }
    return Long.compare(ordinal(), other.ordinal());
  }

  /** How many numbers the counting digits can tell. */
  private long size() {
    long size = 1;
    for (int i = 0; i < suffix.length(); i++) {
      size *= 10;
    }
    return size;
  }
}
