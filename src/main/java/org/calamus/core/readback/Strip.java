package org.calamus.core.readback;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import org.calamus.core.form.Range;
import org.calamus.core.record.FieldId;

/**
 * Where one measure of the bird in the hand falls: in the published range of its species, and among
 * the station's own birds by sex. A picture for the eye, with the same in words beside it; it says
 * nothing of right or wrong, which is the rules' matter.
 *
 * <pre>{@code
 * strip.drawn(21);   // " [---fffbb#mmm-----]  "
 * strip.words();     // "inside, above 12 of 31 M, 27 of 28 F"
 * }</pre>
 *
 * @param field the measured field
 * @param name its name, such as {@code wing}
 * @param amount the bird's, in the field's unit
 * @param published the range of the species table; empty where it has none
 * @param own the station's own birds, a group for each sex
 * @param axis what the drawing spans; amounts outside stand at its ends
 */
public record Strip(
    FieldId field,
    String name,
    BigDecimal amount,
    Optional<Range> published,
    List<Own> own,
    Range axis) {

  /** The bird's mark in a drawing. */
  public static final char BIRD = '#';

  /** The published range in a drawing, where no own bird stands. */
  public static final char RANGE = '-';

  /** The lower end of the published range in a drawing. */
  public static final char LEAST = '[';

  /** The upper end of the published range in a drawing. */
  public static final char MOST = ']';

  /** The bird's mark where it lies below all that is drawn. */
  public static final char BELOW = '<';

  /** The bird's mark where it lies above all that is drawn. */
  public static final char ABOVE = '>';

  /** Own birds of both sexes in a drawing; one sex is its code in small letters. */
  public static final char BOTH = 'b';

  /** Digits kept while a place on the axis is worked out. */
  private static final int DIGITS = 6;

  /** Copies the list. */
  public Strip {
    own = List.copyOf(own);
  }

  /** How a measure stands to the published range. */
  public enum Place {
    /** Below it. */
    LOW("low"),
    /** In it, both ends counted. */
    INSIDE("inside"),
    /** Above it. */
    HIGH("high"),
    /** There is none. */
    UNKNOWN("no published range");

    private final String word;

    Place(String word) {
      this.word = word;
    }

    /** The word shown. */
    public String word() {
      return word;
    }
  }

  /**
   * The station's own birds of the species and a sex.
   *
   * @param sex the code of the sex
   * @param count how many, at least {@link Placing#FEWEST}
   * @param below how many of them have a smaller measure than the bird in the hand
   * @param middle from the tenth to the ninetieth of a hundred of them: what is drawn
   */
  public record Own(String sex, int count, int below, Range middle) {

    private char mark() {
      return Character.toLowerCase(sex.charAt(0));
    }
  }

  /** How the bird stands to the published range. */
  public Place place() {
    if (published.isEmpty()) {
      return Place.UNKNOWN;
    }
    if (amount.compareTo(published.get().least()) < 0) {
      return Place.LOW;
    }
    return amount.compareTo(published.get().most()) > 0 ? Place.HIGH : Place.INSIDE;
  }

  /** The picture in words: {@code inside, above 12 of 31 M, 27 of 28 F}. */
  public String words() {
    StringJoiner words = new StringJoiner(", ");
    words.add(place().word());
    String above = "above ";
    for (Own group : own) {
      words.add(above + group.below() + " of " + group.count() + " " + group.sex());
      above = "";
    }
    return words.toString();
  }

  /**
   * The picture where nothing can be drawn, with the same words: {@code wing 92, published 77 to
   * 100: inside, above 12 of 31 M}.
   */
  public String sentence() {
    String range =
        published
            .map(
                r -> ", published " + r.least().toPlainString() + " to " + r.most().toPlainString())
            .orElse("");
    return name + " " + amount.toPlainString() + range + ": " + words();
  }

  /**
   * The picture in one line, of {@code [ - ]} for the published range, {@code m}, {@code f}, {@code
   * u} and {@code b} for own birds, and the bird's mark over them.
   *
   * @param cells its length, 3 or more; the first and the last are kept for a bird outside
   */
  public String drawn(int cells) {
    char[] line = " ".repeat(cells).toCharArray();
    published.ifPresent(
        range -> {
          int least = column(range.least(), cells);
          int most = column(range.most(), cells);
          fill(line, least, most, RANGE);
          line[least] = LEAST;
          line[most] = MOST;
        });
    for (Own group : own) {
      for (int i = column(group.middle().least(), cells);
          i <= column(group.middle().most(), cells);
          i++) {
        boolean isOther = Character.isLetter(line[i]) && line[i] != group.mark();
        line[i] = isOther ? BOTH : group.mark();
      }
    }
    return withBird(line);
  }

  /**
   * An amount alone on the same axis, such as an earlier one of the same bird.
   *
   * @param other the amount
   * @param mark what stands for it
   * @param cells the length of the line
   */
  public static String point(BigDecimal other, Range axis, char mark, int cells) {
    char[] line = " ".repeat(cells).toCharArray();
    line[column(other, axis, cells)] = mark;
    return new String(line);
  }

  private String withBird(char[] line) {
    int column = column(amount, line.length);
    boolean isBelow = amount.compareTo(axis.least()) < 0;
    boolean isAbove = amount.compareTo(axis.most()) > 0;
    line[column] = isBelow ? BELOW : isAbove ? ABOVE : BIRD;
    return new String(line);
  }

  private static void fill(char[] line, int from, int to, char mark) {
    for (int i = from; i <= to; i++) {
      line[i] = mark;
    }
  }

  private int column(BigDecimal of, int cells) {
    return column(of, axis, cells);
  }

  private static int column(BigDecimal of, Range axis, int cells) {
    BigDecimal span = axis.most().subtract(axis.least());
    if (of.compareTo(axis.least()) < 0) {
      return 0;
    }
    if (of.compareTo(axis.most()) > 0) {
      return cells - 1;
    }
    if (span.signum() == 0) {
      return cells / 2;
    }
    BigDecimal part = of.subtract(axis.least()).divide(span, DIGITS, RoundingMode.HALF_EVEN);
    BigDecimal column = part.multiply(BigDecimal.valueOf(cells - 3L));
    return 1 + column.setScale(0, RoundingMode.HALF_EVEN).intValueExact();
  }

  /** The least range that holds all of these; empty where there are none. */
  static Optional<Range> around(List<Range> ranges) {
    List<BigDecimal> ends = new ArrayList<>();
    ranges.forEach(range -> ends.addAll(List.of(range.least(), range.most())));
    return ends.stream()
        .min(BigDecimal::compareTo)
        .flatMap(l -> ends.stream().max(BigDecimal::compareTo).map(m -> new Range(l, m)));
  }
}
