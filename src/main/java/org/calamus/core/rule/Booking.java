package org.calamus.core.rule;

/** What comes of entering a band's fate in the ledger. */
public sealed interface Booking {

  /**
   * The fate was entered.
   *
   * @param ledger the ledger after it
   */
  record Entered(BandLedger ledger) implements Booking {}

  /**
   * The band has a fate, which stays: no band has two.
   *
   * @param fate the fate it has
   */
  record Refused(BandFate fate) implements Booking {}
}
