package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.calamus.core.record.BandNumber;
import org.junit.jupiter.api.Test;

class BandLedgerTest {

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  private static BandLedger used(String... bands) {
    BandLedger ledger = BandLedger.empty();
    for (String band : bands) {
      ledger = ledger.withUsed(band(band));
    }
    return ledger;
  }

  @Test
  void expectsNothingBeforeTheFirstBand() {
    assertThat(BandLedger.empty().expected()).isEmpty();
    assertThat(used("2841-55601").expected("284")).isEmpty();
  }

  @Test
  void expectsTheSuccessorAlsoBeyondTheEndOfAString() {
    assertThat(used("2841-55601").expected()).contains(band("2841-55602"));
    assertThat(used("2841-55700").expected()).contains(band("2841-55701"));
    assertThat(used("2841-99999").expected()).contains(band("2841-00000"));
  }

  @Test
  void expectsTheNextThatIsNotUsed() {
    assertThat(used("2841-55603", "2841-55602", "2841-55601").expected())
        .contains(band("2841-55604"));
  }

  @Test
  void ofUsedIsAsIfEachHadBeenUsedInTurn() {
    assertThat(
            BandLedger.ofUsed(List.of(band("2841-55601"), band("1750-00012"), band("2841-55603"))))
        .isEqualTo(used("2841-55601", "1750-00012", "2841-55603"));
    assertThat(BandLedger.ofUsed(List.of())).isEqualTo(BandLedger.empty());
  }

  @Test
  void expectsNothingBehindTheLastOfAPrefix() {
    assertThat(used("2841-00000").expected()).isEmpty();
    assertThat(used("2841-00000", "2841-99999").expected()).isEmpty();
  }

  @Test
  void keepsAnExpectationForEveryPrefix() {
    BandLedger ledger = used("2841-55601", "1760-10101");
    assertThat(ledger.expected()).contains(band("1760-10102"));
    assertThat(ledger.expected("2841")).contains(band("2841-55602"));
  }
}
