package org.calamus.core.instrument;

import java.math.BigDecimal;
import java.time.Duration;

/** When a value of an instrument is to be believed. */
public sealed interface StabilityRule {

  /**
   * The rule for a bird on a balance: the load must settle.
   *
   * <p>A mass settles when the balance says so, or, since the mark of a balance may never come
   * while a bird twitches, when its readings agree for a while. The numbers of the second way are
   * our own reasoning from birds in a weighing cone and have no published source; user's device
   * files can change each of them.
   *
   * @param emptyBelow amounts up to this are no bird, in grams; 2 g: the lightest birds weighed are
   *     hummingbirds of 2.5 to 3 g (from memory)
   * @param nearZero up to this the pan is empty again, in grams; 0.3 g is the drift of a wet or
   *     soiled cone that is let pass
   * @param stableReadings how many equal readings in a row the balance must mark as stable; 2
   * @param agreeFor the shortest time for which readings must agree; 1.0 s
   * @param agreeWithin the longest time that is looked back; 1.5 s
   * @param agreeReadings how many readings must agree at least; 4
   * @param spread the most by which they may differ, in grams; 0.2 g
   * @param lightSpread the same for light birds; 0.1 g
   * @param lightBelow what a light bird weighs less than, in grams; 15 g
   */
  record WhenSettled(
      BigDecimal emptyBelow,
      BigDecimal nearZero,
      int stableReadings,
      Duration agreeFor,
      Duration agreeWithin,
      int agreeReadings,
      BigDecimal spread,
      BigDecimal lightSpread,
      BigDecimal lightBelow)
      implements StabilityRule {

    /** The rule for birds, with the numbers named above. */
    public static final WhenSettled BIRDS =
        new WhenSettled(
            new BigDecimal("2"),
            new BigDecimal("0.3"),
            2,
            Duration.ofMillis(1000),
            Duration.ofMillis(1500),
            4,
            new BigDecimal("0.2"),
            new BigDecimal("0.1"),
            new BigDecimal("15"));

    /** Checks that the limits do not contradict each other. */
    public WhenSettled {
      if (nearZero.signum() < 0 || emptyBelow.compareTo(nearZero) < 0) {
        throw new IllegalArgumentException("a bird must weigh more than an empty pan");
      }
      if (stableReadings < 1 || agreeReadings < 2) {
        throw new IllegalArgumentException("too few readings to tell a settled load");
      }
      if (agreeFor.isNegative() || agreeWithin.compareTo(agreeFor) < 0) {
        throw new IllegalArgumentException("the time looked back is shorter than the time needed");
      }
      if (spread.signum() < 0 || lightSpread.signum() < 0) {
        throw new IllegalArgumentException("a spread is not below zero");
      }
    }
  }

  /**
   * The rule for an instrument that sends a value when its button is pressed: each is believed,
   * unless the instrument itself marks it as still moving.
   *
   * @param emptyBelow amounts up to this are passed over, in the unit of the field
   */
  record EachReading(BigDecimal emptyBelow) implements StabilityRule {
    /** Checks that the limit is not below zero. */
    public EachReading {
      if (emptyBelow.signum() < 0) {
        throw new IllegalArgumentException("the limit is not below zero");
      }
    }
  }
}
