package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.calamus.core.rule.Finding.Severity.ASKS;
import static org.calamus.core.rule.Finding.Severity.NOTES;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rules of recaptured birds on both sides of their edges. */
class HistoryRulesTest {

  /** A nuthatch of the year before, wing 90 and tarsus 18.0. */
  private static final Known BIRD =
      Edge.known(
          "2025-09-01T06:00:00Z band 2841-55601, species WBNU, age HY, sex F, wing 90, tarsus 18.0");

  private static Known bird(String when, String fields) {
    return Edge.known(when + " band 2841-55601, " + fields);
  }

  private static Edge again(
      String rule,
      Finding.Severity severity,
      Known known,
      String passes,
      String fails,
      String wouldFit) {
    return new Edge(rule, severity, known, "kind R, band 2841-55601", passes, fails, wouldFit);
  }

  static Stream<Edge> edges() {
    String before = "2026-05-14T06:29:00Z";
    return Stream.of(
        again("recapture.species", ASKS, BIRD, "species WBNU", "species SOSP", "WBNU"),
        new Edge(
            "recapture.species",
            ASKS,
            BIRD,
            "kind C, species SOSP",
            "old-band 2841-55602",
            "old-band 2841-55601",
            "WBNU"),
        again("recapture.sex", ASKS, BIRD, "sex F", "sex M", "F would fit"),
        again("recapture.sex", ASKS, BIRD, "sex U", "sex M", "F would fit"),
        again("recapture.age", ASKS, BIRD, "age SY", "age ASY", "SY would fit"),
        again("recapture.age", ASKS, BIRD, "age AHY", "age HY", "HY on 2025-09-01"),
        again(
            "recapture.age",
            ASKS,
            bird("2023-05-01T06:00:00Z", "age AHY"),
            "age ATY",
            "age TY",
            "ATY would fit"),
        again("recapture.age-finer", NOTES, BIRD, "age SY", "age AHY", "SY would fit"),
        again("recapture.wing", ASKS, BIRD, "wing 93", "wing 94", "86.4 to 93.6"),
        again("recapture.wing", ASKS, BIRD, "wing 87", "wing 86", "86.4 to 93.6"),
        again(
            "recapture.wing",
            ASKS,
            bird("2026-04-01T06:00:00Z", "wing 60"),
            "wing 63",
            "wing 63.5",
            "57 to 63"),
        again(
            "recapture.wing",
            ASKS,
            bird("2025-04-01T06:00:00Z", "age SY, wing 90"),
            "wing 94",
            "wing 94.5",
            "to 94"),
        again(
            "recapture.wing",
            ASKS,
            Edge.known(
                "2024-04-01T06:00:00Z band 2841-55601, wing 60",
                "2024-06-01T06:00:00Z kind R, band 2841-55601, wing 62"),
            "wing 64",
            "wing 64.5",
            "58 to 64"),
        again("recapture.tarsus", ASKS, BIRD, "tarsus 18.8", "tarsus 18.9", "17.2 to 18.8"),
        again("recapture.tarsus", ASKS, BIRD, "tarsus 17.2", "tarsus 17.1", "17.2 to 18.8"),
        again(
            "recapture.mass",
            ASKS,
            bird("2026-05-04T06:30:00Z", "mass 20.0"),
            "mass 25.0",
            "mass 25.1",
            "15 to 25"),
        again(
            "recapture.mass",
            ASKS,
            bird("2026-05-04T06:30:00Z", "mass 20.0"),
            "mass 15.0",
            "mass 14.9",
            "15 to 25"),
        new Edge(
            "recapture.today",
            NOTES,
            Edge.known(before + " band 2841-55601", "2026-05-13T23:59:00Z band 2841-55602"),
            "kind R",
            "band 2841-55602",
            "band 2841-55601",
            "06:29"),
        new Edge(
            "recapture.dead",
            ASKS,
            Edge.known(
                "2026-05-13T06:00:00Z band 2841-55601, release DIED",
                "2026-05-13T06:10:00Z band 2841-55602, release RELEASED",
                "2026-05-13T06:20:00Z band 2841-55603, disposition D"),
            "kind R",
            "band 2841-55602",
            "band 2841-55601",
            "again"),
        new Edge(
            "recapture.dead",
            ASKS,
            Edge.known(
                "2026-05-13T06:10:00Z band 2841-55602, disposition W",
                "2026-05-13T06:20:00Z band 2841-55603, disposition D"),
            "kind R",
            "band 2841-55602",
            "band 2841-55603",
            "again"),
        new Edge(
            "recapture.clock",
            ASKS,
            Edge.known(
                "2026-05-14T06:30:59Z band 2841-55601", "2026-05-14T06:31:00Z band 2841-55602"),
            "kind R",
            "band 2841-55601",
            "band 2841-55602",
            "clock"),
        again(
            "recapture.clock",
            ASKS,
            bird("2026-05-12T06:00:00Z", "species WBNU"),
            "date 2026-05-12",
            "date 2026-05-11",
            "Is the date right"),
        again(
            "recapture.today",
            NOTES,
            bird("2026-05-12T06:00:00Z", "species WBNU"),
            "date 2026-05-13",
            "date 2026-05-12",
            "that day already, at 06:00"),
        again(
            "recapture.today",
            NOTES,
            bird("2026-05-12T13:00:00Z", "species WBNU"),
            "date 2026-05-12, time 12:00",
            "date 2026-05-12",
            "that day already, at 13:00"),
        again(
            "recapture.mass",
            ASKS,
            Edge.known(
                "2026-05-01T06:30:00Z band 2841-55601, mass 20.0",
                "2026-05-13T06:30:00Z kind R, band 2841-55601, mass 26.0"),
            "mass 30.0, date 2026-04-20",
            "mass 30.0, date 2026-05-10",
            "20.0 on 2026-05-01"),
        again(
            "recapture.dead",
            ASKS,
            bird("2026-05-12T06:00:00Z", "release DIED"),
            "date 2026-05-11",
            "date 2026-05-13",
            "died on 2026-05-12"),
        new Edge(
            "recapture.age",
            ASKS,
            bird("2025-09-01T06:00:00Z", "age HY"),
            "kind R, band 2841-55601, age SY",
            "date 2026-05-13",
            "date 2025-12-31",
            "HY"),
        again(
            "recapture.mass",
            ASKS,
            bird("2026-05-04T06:30:00Z", "mass 20.0"),
            "mass 25.1, date 2026-04-20",
            "mass 25.1, date 2026-05-13",
            "15 to 25"));
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

  /** Beyond ten days a bird may have put on what it flies on. */
  @ParameterizedTest
  @MethodSource("edges")
  void findsNothingInABirdThatIsNotKnown(Edge edge) {
    new Edge(
            edge.rule(),
            edge.severity(),
            Known.nothing(),
            edge.given(),
            edge.fails(),
            edge.fails(),
            "")
        .assertPassesOnTheNearSide();
  }

  @Test
  void massIsNotComparedBeyondTenDays() {
    again("recapture.mass", ASKS, bird("2026-05-04T06:29:59Z", "mass 20.0"), "mass 40.0", "", "")
        .assertPassesOnTheNearSide();
  }

  /** Feathers of the hatching year are kept until the second August. */
  @Test
  void aBirdThatHasNotMoultedYetMayNotGrow() {
    again(
            "recapture.wing",
            ASKS,
            bird("2025-09-01T06:00:00Z", "age HY, wing 60"),
            "wing 63",
            "wing 64",
            "57 to 63")
        .assertFindsOnTheFarSide();
  }

  @Test
  void aContradictionThatWasKeptIsNotAskedForEver() {
    Known torn =
        Edge.known(
            "2024-05-01T06:00:00Z band 2841-55601, age SY",
            "2025-05-01T06:00:00Z kind R, band 2841-55601, age SY");
    again("recapture.age", ASKS, torn, "age TY", "age SY", "TY would fit")
        .assertPassesOnTheNearSide();
    again("recapture.age", ASKS, torn, "age TY", "age SY", "TY would fit")
        .assertFindsOnTheFarSide();
  }

  @Test
  void everyRuleHasAnEdge() {
    assertThat(HistoryRules.all().stream().map(Rule::id))
        .containsExactlyInAnyOrderElementsOf(edges().map(Edge::rule).distinct().toList());
  }
}
