package org.calamus.core.rule;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.calamus.core.record.BandNumber;

/**
 * What became of the bands of one prefix.
 *
 * @param byFate the bands' places in their prefix, by fate
 * @param all those with any fate
 */
record Fates(Map<BandFate, RunSet> byFate, RunSet all) {

  static final Fates NONE = new Fates(Map.of(), RunSet.EMPTY);

  Fates {
    byFate = Map.copyOf(byFate);
  }

  /** The bands of one prefix: a prefix says nothing alone where numbers differ in length. */
  record Series(String prefix, int digits) {
    static Series of(BandNumber band) {
      return new Series(band.prefix(), band.suffix().length());
    }
  }

  RunSet of(BandFate fate) {
    return byFate.getOrDefault(fate, RunSet.EMPTY);
  }

  Optional<BandFate> fateOf(BandNumber band) {
    return byFate.keySet().stream().filter(f -> of(f).contains(band.ordinal())).findFirst();
  }

  Fates with(BandNumber band, BandFate fate) {
    Map<BandFate, RunSet> more = new EnumMap<>(BandFate.class);
    more.putAll(byFate);
    more.put(fate, of(fate).with(band.ordinal()));
    return new Fates(more, all.with(band.ordinal()));
  }

  /** The lowest band without a fate from one to another of the same prefix. */
  Optional<BandNumber> next(BandNumber from, BandNumber to) {
    OptionalLong absent = all.firstAbsent(from.ordinal(), to.ordinal());
    return absent.isPresent()
        ? Optional.of(from.withOrdinal(absent.getAsLong()))
        : Optional.empty();
  }
}
