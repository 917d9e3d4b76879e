package org.calamus.core.rule;

import java.util.Map;
import java.util.Optional;
import org.calamus.core.record.BandNumber;

/**
 * The letters of hummingbird bands and the four digits that stand for each in electronic files.
 *
 * @param prefixes the digits by letter
 */
public record BandLetters(Map<String, String> prefixes) {

  private static final int DIGITS = 5;

  /** Copies the map. */
  public BandLetters {
    prefixes = Map.copyOf(prefixes);
  }

  /** Whether the number is one of a hummingbird band: a letter of the set and five digits. */
  public boolean isHummingbird(BandNumber band) {
    return prefixes.containsKey(band.prefix()) && band.suffix().length() == DIGITS;
  }

  /** The number as electronic files have it; empty where the band is no hummingbird's. */
  public Optional<BandNumber> inFiles(BandNumber band) {
    return isHummingbird(band)
        ? Optional.of(new BandNumber(prefixes.get(band.prefix()), band.suffix()))
        : Optional.empty();
  }
}
