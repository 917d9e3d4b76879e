package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.calamus.core.rule.Finding.Severity.ASKS;
import static org.calamus.core.rule.Finding.Severity.NOTES;
import static org.calamus.core.rule.Finding.Severity.REFUSED;

import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.Captures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rules of bands on both sides of their edges. */
class BandRulesTest {

  /** Band 2841-55601 is used, and with it a string is begun. */
  private static final Known LEARNT = Edge.known("2026-05-13T06:00:00Z band 2841-55601");

  /** The same, and 55602 is lost, 55603 destroyed; 1760-10150 was read on a bird. */
  private static final Known FATES =
      Edge.known(
          "2026-05-13T06:00:00Z band 2841-55601",
          "2026-05-13T06:10:00Z kind L, band 2841-55602",
          "2026-05-13T06:20:00Z kind D, band 2841-55603",
          "2026-05-13T06:30:00Z kind F, band 1760-10150");

  /** A string of size 1B of which the first is used, and a fresh one of size 0. */
  private static final Known ISSUED =
      new Known(
          BandLedger.of(
                  List.of(
                      new BandString("1B", band("2841-55601"), band("2841-55700")),
                      new BandString("0", band("1760-10101"), band("1760-10200"))))
              .withUsed(band("2841-55601")),
          Captures.none());

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  static Stream<Edge> edges() {
    return Stream.of(
        new Edge("band.format", REFUSED, LEARNT, "", "band 2841-55602", "band 28-1", "five"),
        new Edge(
            "oldband.format",
            REFUSED,
            LEARNT,
            "kind C",
            "old-band 2841-55601",
            "old-band 28-1",
            "five"),
        new Edge(
            "band.used", REFUSED, LEARNT, "", "band 2841-55602", "band 2841-55601", "2841-55602"),
        new Edge(
            "band.used", REFUSED, FATES, "", "band 2841-55604", "band 2841-55602", "2841-55604"),
        new Edge("band.used", REFUSED, FATES, "", "band 2841-55604", "band 2841-55603", "Destroy"),
        new Edge("band.used", REFUSED, FATES, "", "band 1760-10151", "band 1760-10150", "again"),
        new Edge("band.used", REFUSED, LEARNT, "band 2841-55601", "kind R", "kind N", "2841-55602"),
        new Edge(
            "band.next", REFUSED, LEARNT, "", "band 2841-55602", "band 2841-55603", "2841-55602"),
        new Edge("band.next", REFUSED, LEARNT, "", "band 2841-55602", "band 2841-55620", "swapped"),
        new Edge("band.next", REFUSED, LEARNT, "", "band 2841-55602", "band 2841-55692", "wrong"),
        new Edge(
            "band.next",
            REFUSED,
            LEARNT,
            "",
            "band 2841-55603 !band.next",
            "band 2841-55603",
            "2841-55602"),
        new Edge(
            "band.next", REFUSED, FATES, "", "band 2841-55604", "band 2841-55605", "2841-55604"),
        new Edge("band.next", REFUSED, LEARNT, "band 2841-55603", "kind L", "kind A", "2841-55602"),
        new Edge(
            "band.next", REFUSED, ISSUED, "", "band 1760-10101", "band 1760-10102", "1760-10101"),
        new Edge(
            "band.string", ASKS, LEARNT, "", "band 1760-10101", "band 1760-10102", "1760-10101"),
        new Edge(
            "band.string", ASKS, LEARNT, "", "band 1760-10201", "band 1760-10200", "wrong end"),
        new Edge(
            "band.string", ASKS, ISSUED, "", "band 1760-10101", "band 1760-10200", "wrong end"),
        new Edge("band.string", ASKS, LEARNT, "", "band 2841-55602", "band 284-55602", "dropped"),
        new Edge(
            "band.string",
            ASKS,
            Edge.known("2026-05-13T06:00:00Z band 2841-55605"),
            "",
            "band 2841-55606",
            "band 2841-55604",
            "2841-55605"),
        new Edge(
            "band.issued", ASKS, ISSUED, "", "band 2841-55602", "band 2841-55702", "2841-55602"),
        new Edge("band.issued", ASKS, ISSUED, "", "band 2841-55602", "band 2844-55602", "wrong?"),
        new Edge(
            "band.issued", ASKS, ISSUED, "kind L", "band 2841-55602", "band 2841-55702", "next is"),
        new Edge(
            "band.fate", REFUSED, LEARNT, "kind L", "band 2841-55602", "band 2841-55601", "lost"),
        new Edge(
            "band.fate", REFUSED, FATES, "kind D", "band 2841-55604", "band 2841-55602", "next is"),
        new Edge(
            "band.fate-known",
            ASKS,
            LEARNT,
            "kind D",
            "band 2841-55602",
            "band 1760-10101",
            "next is 2841-55602"),
        new Edge("band.known", ASKS, LEARNT, "kind R", "band 2841-55601", "band 1760-55601", "?"),
        new Edge(
            "band.known",
            ASKS,
            LEARNT,
            "kind R",
            "band 2841-55601",
            "band 2841-55610",
            "2841-55601 is in them"),
        new Edge("band.known", ASKS, FATES, "kind R", "band 1760-10150", "band 2841-55602", "lost"),
        new Edge(
            "band.own", ASKS, LEARNT, "kind F", "band 1760-10150", "band 2841-55601", "recapture"),
        new Edge(
            "band.own", ASKS, LEARNT, "kind F", "band 2841-55701", "band 2841-55602", "recapture"),
        new Edge(
            "band.own", ASKS, ISSUED, "kind F", "band 1760-10201", "band 1760-10200", "recapture"),
        new Edge(
            "oldband.same",
            REFUSED,
            LEARNT,
            "kind C, old-band 2841-55601",
            "band 2841-55602",
            "band 2841-55601",
            "2841-55602"),
        new Edge(
            "oldband.known",
            NOTES,
            LEARNT,
            "kind C",
            "old-band 2841-55601",
            "old-band 2841-55611",
            "2841-55601 is in them"),
        new Edge(
            "band.size-digit",
            ASKS,
            LEARNT,
            "band 2841-55602",
            "band-size 1B",
            "band-size 2",
            "1B"),
        new Edge(
            "band.size-string",
            ASKS,
            ISSUED,
            "band 2841-55602",
            "band-size 1B",
            "band-size 1",
            "1B"),
        new Edge(
            "band.species-size",
            ASKS,
            LEARNT,
            "species WBNU",
            "band-size 1B",
            "band-size 3",
            "over the foot"),
        new Edge(
            "band.species-size",
            ASKS,
            LEARNT,
            "species WBNU",
            "band-size 1B",
            "band-size 0A",
            "injure"),
        new Edge(
            "band.species-size",
            ASKS,
            LEARNT,
            "species GCKI",
            "band-size 0A",
            "band-size 0",
            "no size but"),
        new Edge(
            "band.species-size",
            ASKS,
            LEARNT,
            "species WBNU, band-size 3",
            "leg-gauge 3",
            "leg-gauge 1A",
            "What does the leg gauge say?"),
        new Edge(
            "band.gauge", ASKS, LEARNT, "band-size 1B", "leg-gauge 1B", "leg-gauge 1", "size 1."),
        new Edge(
            "band.gauge", ASKS, LEARNT, "band-size 7A", "leg-gauge 7AS", "leg-gauge 7B", "7B"));
  }

  @ParameterizedTest
  @MethodSource("edges")
  void findsNothingOnTheNearSideOfTheEdge(Edge edge) {
    edge.assertPassesOnTheNearSide();
  }

  @ParameterizedTest
  @MethodSource("edges")
  void findsTheRuleOnTheFarSideOfTheEdge(Edge edge) {
    edge.assertFindsOnTheFarSide();
  }

  @Test
  void everyRuleHasAnEdge() {
    assertThat(
            Stream.of(BandRules.all(), WornBandRules.all(), BandSizeRules.all())
                .flatMap(List::stream)
                .map(Rule::id))
        .containsExactlyInAnyOrderElementsOf(edges().map(Edge::rule).distinct().toList());
  }
}
