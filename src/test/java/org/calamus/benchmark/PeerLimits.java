package org.calamus.benchmark;

/**
 * How sure the peer must be of each word, or the console asks again.
 *
 * @param least of each word, 0 to 1
 * @param leastAlone of a word that is heard alone
 */
record PeerLimits(double least, double leastAlone) {

  /** The best on the tuning half, of all that {@link LimitSweep} tries. */
  static final PeerLimits SWEPT = new PeerLimits(0.2, 0.45);

  /** The words behind the class that did it. */
  static final String FOUND_BY = "Recognition limits limit=2 clean pink20 pink15 white20 babble20";
}
