package org.calamus.core.effort;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What a net came to on a day.
 *
 * @param net the net
 * @param day the day at the station
 * @param open for how long it was open on that day; up to now where it is open
 * @param isOpen whether it is open at the end of that, so that the figures are those so far
 * @param birds the birds that it caught on that day, by the net field of their records
 */
public record NetDay(Net net, LocalDate day, Duration open, boolean isOpen, int birds) {

  private static final BigDecimal SECONDS_AN_HOUR = new BigDecimal(3600);
  private static final BigDecimal HUNDRED = new BigDecimal(100);

  /** Checks the parts. */
  public NetDay {
    Objects.requireNonNull(net);
    Objects.requireNonNull(day);
    if (open.isNegative() || birds < 0) {
      throw new IllegalArgumentException("less than nothing: " + open + ", " + birds);
    }
  }

  /**
   * The net-hours, to two decimals: hours open, times the length in 12 m (DeSante and others, MAPS
   * Manual, second-hand: one 12-m net open for one hour is one net-hour, other lengths in
   * proportion).
   */
  public BigDecimal netHours() {
    return hours(metreSeconds());
  }

  /**
   * The birds for 100 net-hours, to one decimal; empty where the net was not open. Common practice
   * of constant-effort stations, no published source for the 100.
   */
  public Optional<BigDecimal> birdsPer100() {
    return per100(birds, metreSeconds());
  }

  /** Length times time, in metres times seconds: exact, so that a sum of them is. */
  BigDecimal metreSeconds() {
    return net.metres().multiply(new BigDecimal(open.toSeconds()));
  }

  static BigDecimal hours(BigDecimal metreSeconds) {
    return metreSeconds.divide(SECONDS_AN_HOUR.multiply(Net.USUAL_METRES), 2, RoundingMode.HALF_UP);
  }

  static Optional<BigDecimal> per100(int birds, BigDecimal metreSeconds) {
    BigDecimal all = SECONDS_AN_HOUR.multiply(Net.USUAL_METRES).multiply(HUNDRED);
    return metreSeconds.signum() == 0
        ? Optional.empty()
        : Optional.of(
            new BigDecimal(birds).multiply(all).divide(metreSeconds, 1, RoundingMode.HALF_UP));
  }
}
