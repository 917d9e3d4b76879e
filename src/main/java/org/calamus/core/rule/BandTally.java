package org.calamus.core.rule;

/**
 * The account of a string: what was received is used, lost, destroyed or on hand.
 *
 * @param received how many bands the string had
 * @param used how many are on birds
 * @param lost how many are lost
 * @param destroyed how many are destroyed
 * @param onHand how many have no fate yet
 */
public record BandTally(long received, long used, long lost, long destroyed, long onHand) {

  /** Whether every band is accounted for once. */
  public boolean balances() {
    return received == used + lost + destroyed + onHand;
  }
}
