package org.calamus.benchmark;

/**
 * How sure the peer must be of each word, or the console asks again.
 *
 * @param doubt what its scores are divided by before it says how sure it is of a word; the less,
 *     the surer. What it hears does not depend on it
 * @param least of each word, 0 to 1
 * @param leastAlone of a word that is heard alone
 */
record PeerLimits(double doubt, double least, double leastAlone) {

  /** The best on the tuning half, of all that {@link LimitSweep} tries. */
  static final PeerLimits SWEPT = new PeerLimits(40, 0.2, 0.45);

  /** The words behind the class that did it. */
  static final String FOUND_BY = "Recognition limits limit=2 clean pink20 pink15 white20 babble20";
}
