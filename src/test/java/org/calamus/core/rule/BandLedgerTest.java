package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.calamus.core.record.BandNumber;
import org.calamus.core.rule.BandLedger.Issued;
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

  private static BandString string(String size, String first, String last) {
    return new BandString(size, band(first), band(last));
  }

  /** Two strings of size 1B, of which the older is nearly at its end, and one of size 0. */
  private static BandLedger issued() {
    return BandLedger.of(
        List.of(
            string("1B", "2841-55698", "2841-55700"),
            string("1B", "2841-60001", "2841-60100"),
            string("0", "1760-10101", "1760-10200")));
  }

  private static BandLedger booked(BandLedger ledger, String band, BandFate fate) {
    if (ledger.book(band(band), fate) instanceof Booking.Entered entered) {
      return entered.ledger();
    }
    throw new AssertionError(band + " has a fate");
  }

  @Test
  void learntStringsKeepSkippedBandsExpected() {
    assertThat(used("2841-55601", "2841-55604").expected()).contains(band("2841-55602"));
    assertThat(used("2841-55601", "2841-55604", "2841-55602").expected())
        .contains(band("2841-55603"));
    assertThat(used("2841-55601", "2841-55602", "2841-60001").expected())
        .contains(band("2841-60002"));
  }

  @Test
  void nextIsTheLowestWithoutFateOfTheOldestStringOfTheSize() {
    BandLedger ledger = issued();
    assertThat(ledger.next("1B")).contains(band("2841-55698"));
    assertThat(ledger.next("0")).contains(band("1760-10101"));
    assertThat(ledger.next("2")).isEmpty();
    ledger = booked(ledger, "2841-55699", BandFate.USED);
    assertThat(ledger.next("1B")).contains(band("2841-55698"));
    ledger = booked(ledger, "2841-55698", BandFate.LOST);
    assertThat(ledger.next("1B")).contains(band("2841-55700"));
    ledger = booked(ledger, "2841-55700", BandFate.DESTROYED);
    assertThat(ledger.next("1B")).contains(band("2841-60001"));
    assertThat(ledger.expected()).contains(band("2841-60001"));
    assertThat(ledger.expected("2841")).contains(band("2841-60001"));
    assertThat(ledger.next("0")).contains(band("1760-10101"));
  }

  @Test
  void expectsTheNextOfTheSizeUsedLast() {
    assertThat(issued().expected()).contains(band("2841-55698"));
    BandLedger ledger = issued().withUsed(band("1760-10101"));
    assertThat(ledger.expected()).contains(band("1760-10102"));
    assertThat(ledger.expected("2841")).contains(band("2841-55698"));
    assertThat(ledger.withUsed(band("9999-00001")).expected()).contains(band("2841-55698"));
    assertThat(
            BandLedger.of(List.of(string("0", "1760-00000", "1760-00000")))
                .withUsed(band("1760-00000"))
                .expected())
        .isEmpty();
  }

  @Test
  void knowsWhetherABandWasIssued() {
    assertThat(BandLedger.empty().isIssued(band("2841-55698"))).isEqualTo(Issued.UNKNOWN);
    assertThat(issued().isIssued(band("2841-55698"))).isEqualTo(Issued.YES);
    assertThat(issued().isIssued(band("2841-55697"))).isEqualTo(Issued.NO);
    assertThat(issued().isIssued(band("2841-55701"))).isEqualTo(Issued.NO);
    assertThat(issued().stringOf(band("2841-60050")).orElseThrow().first())
        .isEqualTo(band("2841-60001"));
    assertThat(issued().stringOf(band("284-60050"))).isEmpty();
  }

  @Test
  void bookRefusesASecondFateAndKeepsTheFirst() {
    BandLedger ledger = booked(issued(), "2841-55698", BandFate.LOST);
    for (BandFate fate : BandFate.values()) {
      assertThat(ledger.book(band("2841-55698"), fate))
          .isEqualTo(new Booking.Refused(BandFate.LOST));
    }
    assertThat(ledger.withUsed(band("2841-55698"))).isEqualTo(ledger);
    assertThat(ledger.fateOf(band("2841-55698"))).contains(BandFate.LOST);
    assertThat(ledger.fateOf(band("2841-55699"))).isEmpty();
  }

  @Test
  void skippedBeforeListsTheBandsBetweenTheExpectedAndTheUsed() {
    BandLedger ledger = booked(issued(), "2841-60003", BandFate.DESTROYED);
    ledger = booked(ledger, "2841-60004", BandFate.LOST);
    assertThat(ledger.skippedBefore(band("2841-60001"))).isEmpty();
    assertThat(ledger.skippedBefore(band("2841-60007")))
        .containsExactly(
            string("1B", "2841-60001", "2841-60002"), string("1B", "2841-60005", "2841-60006"));
    assertThat(ledger.skippedBefore(band("2841-60101"))).isEmpty();
    assertThat(used("2841-55601").skippedBefore(band("2841-55604")))
        .containsExactly(string("", "2841-55602", "2841-55603"));
    assertThat(used("2841-55601").skippedBefore(band("1760-10101"))).isEmpty();
    assertThat(used("2841-55605").skippedBefore(band("2841-55601"))).isEmpty();
  }

  @Test
  void endingInFindsTheOneExpectedBandThatEndsSo() {
    BandLedger ledger = issued().withUsed(band("2841-55698"));
    assertThat(ledger.allExpected())
        .containsExactly(band("2841-55699"), band("2841-60001"), band("1760-10101"));
    assertThat(ledger.endingIn("699")).contains(band("2841-55699"));
    assertThat(ledger.endingIn("101")).contains(band("1760-10101"));
    assertThat(ledger.endingIn("01")).contains(band("2841-55601")); // two end so: the last used's
    assertThat(ledger.endingIn("60001")).contains(band("2841-60001"));
    assertThat(ledger.endingIn("700")).contains(band("2841-55700")); // none ends so
    assertThat(ledger.endingIn("123456")).isEmpty();
    assertThat(BandLedger.empty().endingIn("700")).isEmpty();
    assertThat(used("1760-10101", "2841-55601").endingIn("102")).contains(band("1760-10102"));
  }

  @Test
  void refusesStringsWithABandInCommon() {
    BandString over = string("1B", "2841-60100", "2841-60200");
    assertThat(issued().overlapping(over)).contains(string("1B", "2841-60001", "2841-60100"));
    BandLedger ledger = issued();
    assertThatThrownBy(() -> ledger.withString(over)).isInstanceOf(IllegalArgumentException.class);
    assertThat(issued().withString(string("1B", "2841-60101", "2841-60200")).strings()).hasSize(4);
    assertThatThrownBy(() -> string("1B", "2841-60002", "2841-60001"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> string("1B", "2841-60002", "1760-60003"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void countsRingsOfOtherSchemesAlong() {
    BandLedger ledger = BandLedger.of(List.of(string("S", "AB1001", "AB1100")));
    ledger = booked(ledger, "AB1001", BandFate.USED);
    assertThat(ledger.expected()).contains(band("AB1002"));
    assertThat(ledger.tally(ledger.strings().get(0))).isEqualTo(new BandTally(100, 1, 0, 0, 99));
  }

  /** Whatever is tried in whatever order, every account balances and no band has two fates. */
  @Test
  void everyStringBalancesWhateverIsBooked() {
    Random random = new Random(2841);
    for (int run = 0; run < 40; run++) {
      BandLedger ledger = issued();
      Map<BandNumber, BandFate> told = new HashMap<>();
      for (int i = 0; i < 150; i++) {
        BandString from = ledger.strings().get(random.nextInt(3));
        BandNumber band =
            from.first().withOrdinal(from.first().ordinal() + random.nextInt((int) from.count()));
        BandFate fate = BandFate.values()[random.nextInt(3)];
        Booking booking = ledger.book(band, fate);
        BandFate before = told.putIfAbsent(band, fate);
        if (booking instanceof Booking.Entered entered) {
          assertThat(before).isNull();
          ledger = entered.ledger();
        } else {
          assertThat(booking).isEqualTo(new Booking.Refused(before));
        }
        assertBalances(ledger, told);
      }
    }
  }

  private static void assertBalances(BandLedger ledger, Map<BandNumber, BandFate> told) {
    for (BandString string : ledger.strings()) {
      BandTally tally = ledger.tally(string);
      assertThat(tally.balances()).isTrue();
      assertThat(tally)
          .isEqualTo(
              new BandTally(
                  string.count(),
                  counted(told, string, BandFate.USED),
                  counted(told, string, BandFate.LOST),
                  counted(told, string, BandFate.DESTROYED),
                  string.count() - told.keySet().stream().filter(string::holds).count()));
      BandNumber lowest = string.first();
      while (told.containsKey(lowest) && !lowest.equals(string.last())) {
        lowest = lowest.successor();
      }
      assertThat(ledger.fateOf(lowest)).isEqualTo(Optional.ofNullable(told.get(lowest)));
      if (tally.onHand() > 0) {
        assertThat(ledger.allExpected()).contains(lowest);
      }
    }
  }

  private static long counted(Map<BandNumber, BandFate> told, BandString of, BandFate fate) {
    return told.entrySet().stream()
        .filter(e -> e.getValue() == fate && of.holds(e.getKey()))
        .count();
  }

  /** A scan over all numbers at each step would take minutes. */
  @Test
  void isQuickOnAStringOfAMillion() {
    BandString million = string("9", "K000001", "K000000");
    assertThat(million.count()).isEqualTo(1_000_000);
    BandLedger all = BandLedger.of(List.of(million));
    BandNumber last = million.last();
    assertTimeoutPreemptively(
        Duration.ofSeconds(10),
        () -> {
          BandLedger ledger = all;
          for (int i = 0; i < 20_000; i++) {
            ledger = ledger.withUsed(ledger.next("9").orElseThrow());
          }
          assertThat(ledger.next("9")).contains(band("K020001"));
          assertThat(ledger.skippedBefore(last)).containsExactly(string("9", "K020001", "K999999"));
          assertThat(ledger.withUsed(last).tally(million))
              .isEqualTo(new BandTally(1_000_000, 20_001, 0, 0, 979_999));
        });
  }
}
