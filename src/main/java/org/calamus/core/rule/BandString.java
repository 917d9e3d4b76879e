package org.calamus.core.rule;

import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.calamus.core.record.BandNumber;

/**
 * Bands of one size with consecutive numbers, such as a string that was issued to the station, or a
 * piece of one.
 *
 * @param size the size as the band size table has it, such as {@code 1B}; empty where not known
 * @param first the lowest number
 * @param last the highest, of the same prefix
 */
public record BandString(String size, BandNumber first, BandNumber last) {

  /** Checks that the numbers follow each other. */
  public BandString {
    if (!first.isOfSeriesOf(last) || first.compareTo(last) > 0) {
      throw new IllegalArgumentException(
          "no string of bands from " + first.text() + " to " + last.text());
    }
  }

  /** How many bands it had when it was new. */
  public long count() {
    return last.ordinal() - first.ordinal() + 1;
  }

  /** Its bands, lowest first. */
  public Stream<BandNumber> bands() {
    return LongStream.rangeClosed(first.ordinal(), last.ordinal()).mapToObj(first::withOrdinal);
  }

  /** Whether the band is one of it. */
  public boolean holds(BandNumber band) {
    return first.isOfSeriesOf(band) && first.compareTo(band) <= 0 && last.compareTo(band) >= 0;
  }

  /** Whether both have a band in common. */
  public boolean overlaps(BandString other) {
    return holds(other.first) || other.holds(first);
  }
}
