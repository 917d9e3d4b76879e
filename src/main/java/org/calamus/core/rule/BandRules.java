package org.calamus.core.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding.Severity;

/** The rules of the bands that are put on birds, and of what became of others. */
final class BandRules {

  private static final String MANUAL =
      "Bird Banding Laboratory, North American Bird Banding Manual, page Band numbers";

  private static final String LOST =
      "Bird Banding Laboratory, North American Bird Banding Manual, lost.cfm: a lost band"
          + " that is found must not be used; one band, one bird: common practice";

  private static final String ONE_FATE = "a band has one fate: follows from its being one thing";

  private static final Set<FieldId> BAND = Set.of(FieldId.BAND);
  private static final Set<FieldId> KIND = Set.of(FieldId.KIND);

  private BandRules() {}

  static List<Rule> all() {
    return List.of(
        new Rule("band.format", BAND, MANUAL, c -> malformed("band.format", FieldId.BAND, c)),
        new Rule(
            "oldband.format",
            Set.of(FieldId.OLD_BAND),
            MANUAL,
            c -> malformed("oldband.format", FieldId.OLD_BAND, c)),
        new Rule("band.used", BAND, KIND, LOST, BandRules::used).byDay(),
        new Rule("band.next", BAND, KIND, MANUAL, BandRules::notNext),
        new Rule("band.string", BAND, KIND, MANUAL, BandRules::begunInside),
        new Rule(
            "band.issued",
            BAND,
            KIND,
            "the strings declared as issued to the station; common practice",
            BandRules::notIssued),
        new Rule("band.fate", BAND, KIND, ONE_FATE, BandRules::secondFate),
        new Rule("band.fate-known", BAND, KIND, ONE_FATE, BandRules::fateOfUnknown));
  }

  private static Optional<Finding> malformed(String rule, FieldId field, RuleCase c) {
    FieldValue value = c.record().value(field).orElseThrow();
    String name = field == FieldId.BAND ? "Band " : "Old band ";
    return value instanceof BandNumber
        ? Optional.empty()
        : Optional.of(
            new Finding(
                rule,
                Severity.REFUSED,
                field,
                name + value.text() + " is not three or four digits and then five.",
                "not a band number. again"));
  }

  /** The band that is put on the bird; empty for a bird whose band is only read. */
  private static Optional<BandNumber> put(RuleCase c) {
    return c.record().band().filter(b -> c.kind().putsBand());
  }

  /** The band of which is told what became of it. */
  private static Optional<BandNumber> told(RuleCase c) {
    return c.record().band().filter(b -> !c.kind().hasBird());
  }

  private static Optional<Finding> used(RuleCase c) {
    return put(c)
        .filter(band -> !c.isOnlyReadLater(band))
        .flatMap(
            band ->
                c.ledger()
                    .fateOf(band)
                    .map(
                        fate ->
                            refused(
                                "band.used",
                                "Band " + band.text() + " is " + why(fate) + next(c) + ".",
                                "band "
                                    + lastThree(band)
                                    + " is "
                                    + fate.spoken()
                                    + (fate == BandFate.USED ? ". read it again" : ""))));
  }

  private static String why(BandFate fate) {
    return fate.shown()
        + " in these records"
        + (fate == BandFate.USED
            ? ". Read it again"
            : ", and must not be used where it is found. Destroy it or send it back");
  }

  private static String next(RuleCase c) {
    return c.ledger().expected().map(e -> "; next is " + e.text()).orElse("");
  }

  private static Optional<Finding> notNext(RuleCase c) {
    return put(c)
        .filter(b -> !c.isKept(FieldId.BAND, "band.next") && c.ledger().fateOf(b).isEmpty())
        .flatMap(
            b -> c.ledger().skippedBefore(b).stream().findFirst().map(s -> notNext(b, s.first())));
  }

  private static Finding notNext(BandNumber band, BandNumber expected) {
    String slip = BandSlips.between(band, expected).map(s -> " (" + s + "?)").orElse("");
    return refused(
        "band.next",
        "Band "
            + band.text()
            + " is not the next of its string: next is "
            + expected.text()
            + slip
            + ".",
        "band " + lastThree(band) + ". expected " + lastThree(expected));
  }

  private static Optional<Finding> begunInside(RuleCase c) {
    return put(c)
        .filter(b -> !c.isKept(FieldId.BAND, "band.string") && c.ledger().fateOf(b).isEmpty())
        .filter(b -> c.ledger().isIssued(b) != BandLedger.Issued.NO)
        .flatMap(b -> begun(c, b, stringOf(c, b)));
  }

  /** The declared string of a band, or the hundred that it is of. */
  private static BandString stringOf(RuleCase c, BandNumber band) {
    return c.ledger()
        .stringOf(band)
        .orElseGet(() -> new BandString("", band.firstOfString(), band.lastOfString()));
  }

  private static Optional<Finding> begun(RuleCase c, BandNumber band, BandString string) {
    Optional<BandNumber> begunWith = c.ledger().begunWith(band);
    if (begunWith.isPresent()) {
      return begunWith.filter(b -> band.compareTo(b) < 0).map(b -> beforeBegin(band, b));
    }
    boolean isLast = band.equals(string.last());
    boolean isDeclared = c.ledger().stringOf(band).isPresent();
    BandTally tally = c.ledger().tally(string);
    boolean isFresh = tally.onHand() == tally.received();
    return c.ledger()
        .nextOf(string)
        .filter(first -> !first.equals(band))
        .filter(first -> !isDeclared || isLast && isFresh)
        .map(first -> begun(c, band, first, isLast));
  }

  private static Finding begun(RuleCase c, BandNumber band, BandNumber first, boolean isLast) {
    return asks(
        "band.string",
        "Band "
            + band.text()
            + (isLast
                ? " begins a string from the wrong end: it is its last, and the first is "
                : " is not the first of its string: the first is ")
            + first.text()
            + BandSlips.behind(band, c.ledger().allExpected())
            + ".",
        "band "
            + Spoken.characters(band.text())
            + (isLast ? " is the last of its string" : " is not the first of its string")
            + ". the first is "
            + lastThree(first));
  }

  private static Finding beforeBegin(BandNumber band, BandNumber begun) {
    return asks(
        "band.string",
        "Band "
            + band.text()
            + " comes before "
            + begun.text()
            + ", with which its string was begun. Read it again.",
        "band " + lastThree(band) + " comes before " + lastThree(begun) + ", the first used");
  }

  private static Optional<Finding> notIssued(RuleCase c) {
    return c.record()
        .band()
        .filter(b -> c.kind().usesBand() && !c.isKept(FieldId.BAND, "band.issued"))
        .filter(b -> c.ledger().isIssued(b) == BandLedger.Issued.NO)
        .map(
            b ->
                asks(
                    "band.issued",
                    "Band "
                        + b.text()
                        + " is of no string that was issued to this station"
                        + BandSlips.behind(b, c.ledger().allExpected())
                        + next(c)
                        + ".",
                    "band " + Spoken.characters(b.text()) + " is of no string of ours"));
  }

  private static Optional<Finding> secondFate(RuleCase c) {
    return told(c)
        .flatMap(
            band ->
                c.ledger()
                    .fateOf(band)
                    .map(
                        fate ->
                            refused(
                                "band.fate",
                                "Band "
                                    + band.text()
                                    + " cannot be "
                                    + (c.kind() == CaptureKind.LOST ? "lost" : "destroyed")
                                    + ": it is "
                                    + fate.shown()
                                    + " in these records. Read it again"
                                    + next(c)
                                    + ".",
                                "band " + lastThree(band) + " is " + fate.spoken())));
  }

  private static Optional<Finding> fateOfUnknown(RuleCase c) {
    return told(c)
        .filter(b -> !c.isKept(FieldId.BAND, "band.fate-known"))
        .filter(b -> c.ledger().isIssued(b) == BandLedger.Issued.UNKNOWN)
        .filter(b -> c.ledger().begunWith(b).isEmpty())
        .map(
            b ->
                asks(
                    "band.fate-known",
                    "Band "
                        + b.text()
                        + " is of a string of which these records know no band"
                        + BandSlips.behind(b, c.ledger().allExpected())
                        + next(c)
                        + ".",
                    "band " + Spoken.characters(b.text()) + " is of no string in these records"));
  }

  private static Finding refused(String rule, String shown, String spoken) {
    return new Finding(rule, Severity.REFUSED, FieldId.BAND, shown, spoken);
  }

  private static Finding asks(String rule, String shown, String spoken) {
    return new Finding(rule, Severity.ASKS, FieldId.BAND, shown, spoken);
  }

  private static String lastThree(BandNumber band) {
    return Spoken.digits(band.lastDigits());
  }
}
