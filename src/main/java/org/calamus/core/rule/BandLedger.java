package org.calamus.core.rule;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.BandNumber;

/**
 * Which bands have been put on a bird, and which is next.
 *
 * @param used every band in the saved records
 * @param lastByPrefix the band used last, by prefix
 * @param lastUsed the band used last of all
 */
public record BandLedger(
    Set<BandNumber> used, Map<String, BandNumber> lastByPrefix, Optional<BandNumber> lastUsed) {

  /** Copies the collections. */
  public BandLedger {
    used = Collections.unmodifiableSet(new HashSet<>(used));
    lastByPrefix = Collections.unmodifiableMap(new HashMap<>(lastByPrefix));
  }

  /** A ledger without a band. */
  public static BandLedger empty() {
    return new BandLedger(Set.of(), Map.of(), Optional.empty());
  }

  /** A ledger of bands that were used in this order. */
  public static BandLedger ofUsed(List<BandNumber> bands) {
    Map<String, BandNumber> last = new HashMap<>();
    bands.forEach(band -> last.put(band.prefix(), band));
    Optional<BandNumber> lastOfAll =
        bands.isEmpty() ? Optional.empty() : Optional.of(bands.get(bands.size() - 1));
    return new BandLedger(new HashSet<>(bands), last, lastOfAll);
  }

  /** The ledger after a band was used. */
  public BandLedger withUsed(BandNumber band) {
    Set<BandNumber> moreUsed = new HashSet<>(used);
    moreUsed.add(band);
    Map<String, BandNumber> last = new HashMap<>(lastByPrefix);
    last.put(band.prefix(), band);
    return new BandLedger(moreUsed, last, Optional.of(band));
  }

  /** The next unused band behind the one used last; empty where there is none. */
  public Optional<BandNumber> expected() {
    return lastUsed.flatMap(this::nextUnused);
  }

  /** The next unused band of this prefix; empty where none was used yet, or the last was. */
  public Optional<BandNumber> expected(String prefix) {
    return Optional.ofNullable(lastByPrefix.get(prefix)).flatMap(this::nextUnused);
  }

  /** The bands between the next one of the band's string and it that nothing became of yet. */
  public java.util.List<BandNumber> skippedBefore(BandNumber band) {
    java.util.List<BandNumber> skipped = new java.util.ArrayList<>();
    Optional<BandNumber> at = expected(band.prefix()).filter(e -> e.compareTo(band) < 0);
    while (at.isPresent() && at.get().compareTo(band) < 0 && skipped.size() < 20) {
      skipped.add(at.get());
      at = nextUnused(at.get());
    }
    return skipped;
  }

  /** The size of the string that a band is of; empty where it is not known. */
  public Optional<String> sizeOf(BandNumber band) {
    return Optional.empty();
  }

  /** No band follows the last of a prefix, whose suffix is 00000. */
  private Optional<BandNumber> nextUnused(BandNumber last) {
    BandNumber at = last;
    while (!at.isLastOfPrefix()) {
      at = at.successor();
      if (!used.contains(at)) {
        return Optional.of(at);
      }
    }
    return Optional.empty();
  }
}
