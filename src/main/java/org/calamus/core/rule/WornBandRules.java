package org.calamus.core.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding.Severity;

/** The rules of the band that a bird wore already when it was caught. */
final class WornBandRules {

  private static final String PRACTICE =
      "a misread band makes a bird that never was; common practice, no published source";

  private static final String OWN = "the station's own records and strings; common practice";

  private WornBandRules() {}

  static List<Rule> all() {
    Set<FieldId> kind = Set.of(FieldId.KIND);
    Set<FieldId> both = Set.of(FieldId.BAND, FieldId.OLD_BAND);
    return List.of(
        new Rule("band.known", Set.of(FieldId.BAND), kind, PRACTICE, WornBandRules::notKnown),
        new Rule("band.own", Set.of(FieldId.BAND), kind, OWN, WornBandRules::ours),
        new Rule("oldband.same", both, "no bird gets its own band", WornBandRules::same),
        new Rule(
            "oldband.known", Set.of(FieldId.OLD_BAND), kind, PRACTICE, WornBandRules::oldNotKnown));
  }

  private static Optional<Finding> notKnown(RuleCase c) {
    return c.record()
        .band()
        .filter(b -> c.kind() == CaptureKind.RECAPTURE && !c.isKept(FieldId.BAND, "band.known"))
        .filter(b -> !c.known().isOnBird(b))
        .map(
            b ->
                new Finding(
                    "band.known",
                    Severity.ASKS,
                    FieldId.BAND,
                    "Band " + b.text() + " is " + notInRecords(c, b) + nearest(c, b) + ".",
                    "band " + Spoken.characters(b.text()) + " is not in these records. foreign"));
  }

  private static String notInRecords(RuleCase c, BandNumber band) {
    return c.ledger()
        .fateOf(band)
        .map(fate -> fate.shown() + " in these records, and on no bird. Read it again")
        .orElse("not in these records: a foreign band? Read it again");
  }

  private static String nearest(RuleCase c, BandNumber band) {
    return BandSlips.oneSlipAway(band, c.known()::isOnBird)
        .map(b -> "; " + b.text() + " is in them")
        .orElse("");
  }

  private static Optional<Finding> ours(RuleCase c) {
    return c.record()
        .band()
        .filter(b -> c.kind() == CaptureKind.FOREIGN && !c.isKept(FieldId.BAND, "band.own"))
        .flatMap(b -> why(c, b).map(why -> ours(b, why)));
  }

  private static Optional<String> why(RuleCase c, BandNumber band) {
    if (c.known().isOnBird(band)) {
      return Optional.of("in these records");
    }
    boolean isOfOurString =
        c.ledger().isIssued(band) == BandLedger.Issued.YES
            || c.ledger().begunWith(band).isPresent();
    return isOfOurString ? Optional.of("of a string of this station's") : Optional.empty();
  }

  private static Finding ours(BandNumber band, String why) {
    return new Finding(
        "band.own",
        Severity.ASKS,
        FieldId.BAND,
        "Band " + band.text() + " is " + why + ": a recapture and not a foreign band?",
        "band " + Spoken.digits(band.lastDigits()) + " is of this station. a recapture");
  }

  private static Optional<Finding> same(RuleCase c) {
    return c.record()
        .band(FieldId.OLD_BAND)
        .filter(old -> c.record().band().filter(old::equals).isPresent())
        .map(
            old ->
                new Finding(
                    "oldband.same",
                    Severity.REFUSED,
                    FieldId.OLD_BAND,
                    "Old band "
                        + old.text()
                        + " is the new band, too"
                        + c.ledger().expected().map(e -> "; new is " + e.text()).orElse("")
                        + ". Give the one that is wrong again.",
                    "old band and new band are the same. again"));
  }

  private static Optional<Finding> oldNotKnown(RuleCase c) {
    boolean readsOld = c.kind().bandRead().filter(FieldId.OLD_BAND::equals).isPresent();
    return c.record()
        .band(FieldId.OLD_BAND)
        .filter(old -> readsOld && !c.known().isOnBird(old))
        .map(
            old ->
                new Finding(
                    "oldband.known",
                    Severity.NOTES,
                    FieldId.OLD_BAND,
                    "Old band "
                        + old.text()
                        + " is "
                        + notInRecords(c, old)
                        + nearest(c, old)
                        + ".",
                    "old band " + Spoken.digits(old.lastDigits()) + " is not in these records"));
  }
}
