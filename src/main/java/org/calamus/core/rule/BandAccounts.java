package org.calamus.core.rule;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;

/**
 * The accounts of the bands at the end of a day: every band of a string has one fate, no band
 * between used ones is unexplained, and the day used as many bands as birds got one.
 *
 * @param known what the saved records tell
 * @param zone the station's zone
 */
record BandAccounts(Known known, ZoneId zone) {

  /** The findings of the day's end, with what they rest on. */
  static final List<String> CATALOGUE =
      List.of(
          "ledger.balance: derived: every band that was received has one fate, or none yet",
          "ledger.day: a band for every bird that got one; common practice",
          "ledger.gap: nothing between two used bands is unexplained; common practice");

  BandAccounts {
    Objects.requireNonNull(known);
    Objects.requireNonNull(zone);
  }

  /** What does not add up at the end of a day; all of it is noted, and nothing is refused. */
  List<Finding> dayEnd(LocalDate day) {
    List<Finding> findings = new ArrayList<>();
    for (BandString string : known.ledger().strings()) {
      unbalanced(string, known.ledger().tally(string)).ifPresent(findings::add);
    }
    ofDay(day).ifPresent(findings::add);
    known.ledger().gaps().stream().map(BandAccounts::gap).forEach(findings::add);
    return List.copyOf(findings);
  }

  /** A string of which what was received is not what became of it and what is on hand. */
  static Optional<Finding> unbalanced(BandString string, BandTally tally) {
    return tally.balances()
        ? Optional.empty()
        : Optional.of(
            noted(
                "ledger.balance",
                "Band string "
                    + range(string)
                    + " does not balance: received "
                    + tally.received()
                    + ", used "
                    + tally.used()
                    + ", lost "
                    + tally.lost()
                    + ", destroyed "
                    + tally.destroyed()
                    + ", on hand "
                    + tally.onHand()
                    + ". Count what is on hand.",
                "the string from "
                    + Spoken.characters(string.first().text())
                    + " does not balance"));
  }

  private Optional<Finding> ofDay(LocalDate day) {
    List<PastCapture> banded =
        known.captures().onDay(day, zone).stream().filter(c -> c.kind().putsBand()).toList();
    Set<BandNumber> bands = new HashSet<>();
    List<PastCapture> without =
        banded.stream()
            .filter(c -> c.band().filter(b -> isUsed(b) && bands.add(b)).isEmpty())
            .toList();
    return without.isEmpty()
        ? Optional.empty()
        : Optional.of(
            noted(
                "ledger.day",
                "Bands of "
                    + day
                    + ": "
                    + banded.size()
                    + " birds got one, and "
                    + bands.size()
                    + " bands were used. Look at "
                    + without.stream().map(BandAccounts::named).collect(Collectors.joining(", "))
                    + ".",
                Spoken.digits(Integer.toString(banded.size()))
                    + " birds got a band. bands used "
                    + Spoken.digits(Integer.toString(bands.size()))));
  }

  private boolean isUsed(BandNumber band) {
    return known.ledger().fateOf(band).filter(BandFate.USED::equals).isPresent();
  }

  private static String named(PastCapture capture) {
    return "record "
        + capture.id()
        + capture.band().map(b -> " (" + b.text() + ")").orElse(" (no band)");
  }

  private static Finding gap(BandString gap) {
    boolean isOne = gap.count() == 1;
    return noted(
        "ledger.gap",
        (isOne ? "Band " : "Bands ")
            + range(gap)
            + (isOne ? " is" : " are")
            + " not accounted for: lost, destroyed, or still on the string.",
        "band " + Spoken.digits(gap.first().lastDigits()) + " is not accounted for");
  }

  private static String range(BandString string) {
    return string.count() == 1
        ? string.first().text()
        : string.first().text() + " to " + string.last().text();
  }

  private static Finding noted(String rule, String shown, String spoken) {
    return new Finding(rule, Finding.Severity.NOTES, FieldId.BAND, shown, spoken);
  }
}
