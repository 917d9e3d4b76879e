package org.calamus.core.summary;

import java.util.List;
import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.BandFate;
import org.calamus.core.rule.BandLedger;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.BandTally;

/**
 * What became of the bands of a string.
 *
 * @param string the string
 * @param tally how many are used, lost, destroyed, and on hand
 * @param unexplained the bands before its last used one that have no fate: skipped, and not yet
 *     accounted for
 * @param next the lowest band without a fate, which is asked for next; empty where none is left
 * @param lost the bands that are lost
 * @param destroyed the bands that are destroyed
 */
public record StringAccount(
    BandString string,
    BandTally tally,
    List<BandString> unexplained,
    Optional<BandNumber> next,
    List<BandNumber> lost,
    List<BandNumber> destroyed) {

  /** Copies the lists. */
  public StringAccount {
    unexplained = List.copyOf(unexplained);
    lost = List.copyOf(lost);
    destroyed = List.copyOf(destroyed);
  }

  /** The accounts of the strings that the station works with, in the order of their opening. */
  public static List<StringAccount> of(BandLedger ledger) {
    return ledger.inUse().stream().map(s -> of(ledger, s)).toList();
  }

  private static StringAccount of(BandLedger ledger, BandString string) {
    BandTally tally = ledger.tally(string);
    // most strings have neither, and their bands need not be looked at one by one
    return new StringAccount(
        string,
        tally,
        ledger.gaps(string),
        ledger.nextOf(string),
        tally.lost() == 0 ? List.of() : with(ledger, string, BandFate.LOST),
        tally.destroyed() == 0 ? List.of() : with(ledger, string, BandFate.DESTROYED));
  }

  private static List<BandNumber> with(BandLedger ledger, BandString string, BandFate fate) {
    return string.bands().filter(b -> ledger.fateOf(b).filter(fate::equals).isPresent()).toList();
  }

  /** How many are skipped and not accounted for. */
  public long unexplainedCount() {
    return unexplained.stream().mapToLong(BandString::count).sum();
  }

  /** How many are left on the string behind the last one used. */
  public long left() {
    return tally.onHand() - unexplainedCount();
  }

  /** Whether all of it is used up or accounted for. */
  public boolean isFinished() {
    return tally.onHand() == 0;
  }
}
