package org.calamus.port;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a station decided for itself about its work.
 *
 * @param nets the codes of its nets, each with a spoken form behind an equals sign where it has
 *     one, such as {@code SP = south pond}; where there is none, nets are numbered 1 to 99
 * @param people the initials of those who band and write, likewise
 * @param strings the band strings it was issued; where there is none they are learnt from the first
 *     band used
 * @param warnAfter how long a bird is held before the console warns for the first time
 * @param limit how long a bird may be held
 * @param netsOpenedAt when the nets are opened at the earliest, by the clock at the station; empty
 *     where that is not said
 * @param netLengths the lengths in metres of the nets that are not 12 m long, by their codes
 * @param scribe the initials of who writes, where somebody does besides the bander
 */
public record Protocol(
    List<String> nets,
    List<String> people,
    List<Issued> strings,
    Duration warnAfter,
    Duration limit,
    Optional<LocalTime> netsOpenedAt,
    Map<String, BigDecimal> netLengths,
    Optional<String> scribe) {

  /**
   * Five minutes in the hand are long for a practised bander and ten too long (common practice, no
   * published source; a bird takes one to three minutes).
   */
  private static final Protocol USUAL =
      new Protocol(
          List.of(),
          List.of(),
          List.of(),
          Duration.ofMinutes(5),
          Duration.ofMinutes(10),
          Optional.empty(),
          Map.of(),
          Optional.empty());

  /** Copies the lists and checks the limits. */
  public Protocol {
    nets = List.copyOf(nets);
    people = List.copyOf(people);
    strings = List.copyOf(strings);
    Objects.requireNonNull(netsOpenedAt);
    Objects.requireNonNull(scribe);
    netLengths = Map.copyOf(netLengths);
    if (warnAfter.isNegative() || limit.compareTo(warnAfter) < 0) {
      throw new IllegalArgumentException("a warning after the limit");
    }
  }

  /** The same with another scribe. */
  public Protocol writtenBy(Optional<String> other) {
    return new Protocol(nets, people, strings, warnAfter, limit, netsOpenedAt, netLengths, other);
  }

  /** What holds where the station says nothing. */
  public static Protocol usual() {
    return USUAL;
  }

  /**
   * A string of bands that the station was issued.
   *
   * @param size the size, such as {@code 1B}
   * @param first the first number
   * @param last the last number
   */
  public record Issued(String size, String first, String last) {}
}
