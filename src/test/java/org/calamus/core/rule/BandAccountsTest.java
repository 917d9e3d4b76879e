package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.Captures;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

class BandAccountsTest {

  private static final LocalDate DAY = LocalDate.of(2026, 5, 13);

  private static BandString string(String first, String last) {
    return new BandString(
        "1B", BandNumber.parse(first).orElseThrow(), BandNumber.parse(last).orElseThrow());
  }

  private static List<String> rules(Known known) {
    return new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy())
        .dayEnd(known, DAY).stream().map(Finding::rule).toList();
  }

  @Test
  void everythingAddsUpWhereEveryBandIsExplained() {
    assertThat(
            rules(
                Edge.known(
                    "2026-05-13T06:00:00Z band 2841-55601",
                    "2026-05-13T06:10:00Z kind L, band 2841-55602",
                    "2026-05-13T06:20:00Z kind C, old-band 1760-10150, band 2841-55603",
                    "2026-05-13T06:30:00Z kind R, band 2841-55601",
                    "2026-05-13T06:40:00Z kind U, species WBNU")))
        .isEmpty();
    assertThat(rules(Known.nothing())).isEmpty();
  }

  @Test
  void notesABandThatWasSkippedAndIsNotExplained() {
    Known skipped =
        Edge.known("2026-05-13T06:00:00Z band 2841-55601", "2026-05-13T06:20:00Z band 2841-55604");
    List<Finding> findings = new BandAccounts(skipped, ZoneId.of("UTC")).dayEnd(DAY);
    assertThat(findings).singleElement().extracting(Finding::rule).isEqualTo("ledger.gap");
    assertThat(findings.get(0).shown()).contains("Bands 2841-55602 to 2841-55603");
    assertThat(findings.get(0).severity()).isEqualTo(Finding.Severity.NOTES);
  }

  @Test
  void notesABandThatWasSkippedInADeclaredString() {
    BandLedger ledger =
        BandLedger.of(List.of(string("2841-55601", "2841-55700")))
            .withUsed(string("2841-55602", "2841-55602").first());
    assertThat(new BandAccounts(new Known(ledger, Captures.none()), ZoneId.of("UTC")).dayEnd(DAY))
        .singleElement()
        .extracting(Finding::shown)
        .asString()
        .contains("Band 2841-55601 is not");
  }

  @Test
  void notesABirdThatGotNoBandAndABandThatTwoBirdsGot() {
    assertThat(
            rules(
                Edge.known(
                    "2026-05-13T06:00:00Z band 2841-55601",
                    "2026-05-13T06:10:00Z species WBNU, release EARLY")))
        .containsExactly("ledger.day");
    assertThat(
            rules(
                Edge.known(
                    "2026-05-13T06:00:00Z band 2841-55601",
                    "2026-05-13T06:10:00Z band 2841-55601")))
        .containsExactly("ledger.day");
  }

  @Test
  void looksAtTheDayAlone() {
    assertThat(
            rules(
                Edge.known(
                    "2026-05-13T06:00:00Z band 2841-55601",
                    "2026-05-14T00:00:00Z species WBNU",
                    "2026-05-12T23:59:59Z species WBNU")))
        .isEmpty();
  }

  @Test
  void notesAStringThatDoesNotBalance() {
    BandString string = string("2841-55601", "2841-55700");
    assertThat(BandAccounts.unbalanced(string, new BandTally(100, 90, 3, 2, 5))).isEmpty();
    assertThat(
            BandAccounts.unbalanced(string, new BandTally(100, 90, 3, 2, 4)).orElseThrow().shown())
        .contains("2841-55601 to 2841-55700", "received 100", "on hand 4");
  }
}
