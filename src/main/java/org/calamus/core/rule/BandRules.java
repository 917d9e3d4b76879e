package org.calamus.core.rule;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/** The rules of band numbers and strings. */
final class BandRules {

  private static final String MANUAL =
      "Bird Banding Laboratory, North American Bird Banding Manual, page Band numbers";

  private BandRules() {}

  static List<Rule> all() {
    Set<FieldId> band = Set.of(FieldId.BAND);
    return List.of(
        new Rule("band.format", band, MANUAL, BandRules::malformed),
        new Rule(
            "band.used", band, "every band goes on one bird; common practice", BandRules::used),
        new Rule("band.next", band, MANUAL, BandRules::notNext),
        new Rule("band.string", band, MANUAL, BandRules::stringBegunInside));
  }

  private static Optional<Finding> malformed(RuleCase c) {
    FieldValue value = c.record().value(FieldId.BAND).orElseThrow();
    return value instanceof BandNumber
        ? Optional.empty()
        : refused(
            "band.format",
            "Band " + value.text() + " is not three or four digits and then five.",
            "not a band number. again");
  }

  private static Optional<Finding> used(RuleCase c) {
    return c.record()
        .band()
        .flatMap(band -> c.ledger().fateOf(band).flatMap(fate -> used(c, band, fate)));
  }

  private static Optional<Finding> used(RuleCase c, BandNumber band, BandFate fate) {
    String next = c.ledger().expected().map(e -> "; next is " + e.text()).orElse("");
    return refused(
        "band.used",
        "Band "
            + band.text()
            + " is "
            + fate.shown()
            + " in these records. Read it again"
            + next
            + ".",
        "band " + lastThree(band) + " is " + fate.spoken() + ". read it again");
  }

  private static Optional<Finding> notNext(RuleCase c) {
    return c.record()
        .band()
        .flatMap(
            band ->
                c.ledger()
                    .expected(band.prefix())
                    .filter(expected -> !expected.equals(band))
                    .map(expected -> notNext(band, expected)));
  }

  private static Finding notNext(BandNumber band, BandNumber expected) {
    return new Finding(
        "band.next",
        Finding.Severity.ASKS,
        FieldId.BAND,
        "Band "
            + band.text()
            + " is not the next of its string: next is "
            + expected.text()
            + slip(band, expected)
            + ".",
        "band " + lastThree(band) + ". expected " + lastThree(expected));
  }

  private static String slip(BandNumber band, BandNumber expected) {
    return Slips.isTransposed(band.text(), expected.text()) ? " (two digits swapped?)" : "";
  }

  private static Optional<Finding> stringBegunInside(RuleCase c) {
    return c.record()
        .band()
        .filter(band -> c.ledger().expected(band.prefix()).isEmpty())
        .filter(band -> band.positionInString() != 1)
        .map(
            band ->
                new Finding(
                    "band.string",
                    Finding.Severity.ASKS,
                    FieldId.BAND,
                    "Band "
                        + band.text()
                        + " begins a string that these records do not know, and is not its first,"
                        + " which is "
                        + band.firstOfString().text()
                        + ".",
                    "band " + Spoken.characters(band.text()) + " begins a string inside"));
  }

  private static Optional<Finding> refused(String rule, String shown, String spoken) {
    return Optional.of(new Finding(rule, Finding.Severity.REFUSED, FieldId.BAND, shown, spoken));
  }

  private static String lastThree(BandNumber band) {
    return Spoken.digits(band.lastDigits());
  }
}
