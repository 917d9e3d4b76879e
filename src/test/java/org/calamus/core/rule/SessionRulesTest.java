package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.calamus.core.rule.Finding.Severity.ASKS;
import static org.calamus.core.rule.Finding.Severity.NOTES;
import static org.calamus.core.rule.Finding.Severity.REFUSED;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The rules of times, release, status, kind and cost on both sides of their edges. */
class SessionRulesTest {

  private static Edge edge(
      String rule,
      Finding.Severity severity,
      String given,
      String passes,
      String fails,
      String wouldFit) {
    return new Edge(rule, severity, Known.nothing(), given, passes, fails, wouldFit);
  }

  static Stream<Edge> edges() {
    return Stream.of(
        edge("time.future", REFUSED, "", "time 06:30", "time 06:31", "it is 06:30"),
        edge("time.future", REFUSED, "", "time 18:31", "time 18:30", "before that"),
        edge("time.opening", ASKS, "", "time 05:30", "time 05:29", "from 05:30"),
        edge("time.bag", ASKS, "", "time 05:30", "time 05:29", "up to 60"),
        edge("time.future", REFUSED, "", "date 2026-05-13, time 06:31", "time 06:31", "or a date"),
        edge("time.opening", ASKS, "", "date 2026-05-13, time 05:29", "time 05:29", "from 05:30"),
        edge("time.bag", ASKS, "", "date 2026-05-13, time 05:29", "time 05:29", "up to 60"),
        edge("time.bag", ASKS, "", "date 2026-05-14, time 05:29", "time 05:29", "up to 60"),
        edge("date.future", REFUSED, "", "date 2026-05-14", "date 2026-05-15", "2026-05-14"),
        edge("date.long-ago", ASKS, "", "date 2026-05-07", "date 2026-05-06", "from 2026-05-07"),
        edge("release.remark", NOTES, "", "release RELEASED", "release DIED", "remark"),
        edge("release.remark", NOTES, "", "note stiff, release DIED", "release DIED", "remark"),
        edge("release.cost", ASKS, "", "release ESCAPED", "release DIED", "be reported dead"),
        edge("release.cost", ASKS, "", "disposition D, release DIED", "release DIED", "reported"),
        edge("release.cost", ASKS, "", "release EARLY", "disposition W, release DIED", "reported"),
        edge(
            "release.cost",
            ASKS,
            "",
            "release DIED !release.cost, disposition W",
            "release DIED, disposition W",
            "reported"),
        edge(
            "release.dead",
            ASKS,
            "disposition D",
            "release DIED",
            "release RELEASED",
            "a bird found dead"),
        edge(
            "release.dead",
            ASKS,
            "release EARLY",
            "disposition S W",
            "disposition W D",
            "a bird found dead"),
        edge("disposition.cost", ASKS, "", "disposition W", "disposition D", "reported dead"),
        edge(
            "disposition.cost",
            ASKS,
            "",
            "release DIED, disposition D",
            "release ESCAPED, disposition D",
            "reported dead"),
        edge(
            "disposition.remark",
            NOTES,
            "",
            "note left wing, disposition W",
            "disposition W",
            "remark"),
        edge("status.remark", NOTES, "", "status 300", "status 500", "remark"),
        edge("status.remark", NOTES, "", "note weak, status 500", "status 500", "remark"),
        edge("status.remark", NOTES, "", "status 301", "status 385", "remark"),
        edge("status.pair", ASKS, "", "status 300", "status 340", "another"),
        edge("status.pair", ASKS, "", "status 200", "status 240", "another"),
        edge("status.pair", ASKS, "", "status 400", "status 488", "another"),
        edge("status.pair", ASKS, "", "status 501", "status 503", "another"),
        edge("status.banded", ASKS, "", "status 300", "status 000", "300 would fit"),
        edge("status.banded", ASKS, "status 000", "kind U", "kind R", "300 would fit"),
        edge(
            "kind.fields",
            ASKS,
            "band 2841-55601, species WBNU",
            "kind R",
            "kind U",
            "N, R, F, C, A would fit"),
        edge("kind.fields", ASKS, "wing 92", "kind N", "kind L", "Wing chord 92"));
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

  @ParameterizedTest
  @CsvSource({"PT10M, false", "PT10M1S, true"})
  void notesABirdThatWasHeldBeyondTheLimit(Duration held, boolean isNoted) {
    CaptureRecord record =
        Edge.record(Edge.NOW.minus(held), "band 2841-55601")
            .with(FieldId.RELEASE, Edge.entry("release RELEASED", Edge.NOW));
    List<Finding> findings =
        new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy())
            .check(record, FieldId.RELEASE, Known.nothing(), Edge.NOW);
    assertThat(findings.stream().anyMatch(f -> f.rule().equals("release.held"))).isEqualTo(isNoted);
    assertThat(findings)
        .allSatisfy(f -> assertThat(f.shown()).contains("RELEASED", "limit is 10 minutes"));
  }

  @Test
  void aBirdOfAnotherDayWasNotHeldUntilItWasEntered() {
    CaptureRecord record =
        Edge.record(Edge.NOW.minus(Duration.ofHours(3)), "band 2841-55601, date 2026-05-12")
            .with(FieldId.RELEASE, Edge.entry("release RELEASED", Edge.NOW));
    assertThat(
            new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy())
                .check(record, FieldId.RELEASE, Known.nothing(), Edge.NOW))
        .isEmpty();
  }

  /** Nets for owls are opened in the evening, and half the birds come behind midnight. */
  @Test
  void aNightMayRunOverMidnight() {
    Rules evening =
        new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy(LocalTime.of(19, 0)));
    Instant behindMidnight = Instant.parse("2026-05-14T00:10:00Z");
    for (String time : List.of("time 23:50", "time 00:05")) {
      assertThat(
              evening.check(
                  Edge.record(behindMidnight, time), FieldId.TIME, Known.nothing(), behindMidnight))
          .isEmpty();
    }
  }

  @Test
  void everyRuleHasAnEdge() {
    Stream<String> tested = Stream.concat(edges().map(Edge::rule), Stream.of("release.held"));
    assertThat(Stream.of(SessionRules.all(), CostRules.all()).flatMap(List::stream).map(Rule::id))
        .containsExactlyInAnyOrderElementsOf(tested.distinct().toList());
  }
}
