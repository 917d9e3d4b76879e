package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldSpec;
import org.calamus.support.Fenwick;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every rule of {@link RuleEdges} on both sides of its edge, and what it says there. */
class RuleEdgesTest {

  private static final Rules RULES =
      new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy());
  private static final Set<String> IDS =
      RuleEdges.all().stream().map(RuleEdges.Edge::rule).collect(Collectors.toSet());
  private static final Known KNOWN = RuleEdges.known();

  private static List<RuleEdges.Edge> edges() {
    return RuleEdges.all();
  }

  private static List<Finding> findings(RuleEdges.Bird bird) {
    return RULES.check(bird.record(), bird.filled(), KNOWN, bird.record().capturedAt());
  }

  @ParameterizedTest
  @MethodSource("edges")
  void findsNothingOnTheNearSideOfTheEdge(RuleEdges.Edge edge) {
    assertThat(findings(edge.passes())).extracting(Finding::rule).doesNotContain(edge.rule());
  }

  @ParameterizedTest
  @MethodSource("edges")
  void findsTheRuleOnTheFarSideOfTheEdge(RuleEdges.Edge edge) {
    assertThat(findings(edge.fails()))
        .filteredOn(f -> f.rule().equals(edge.rule()))
        .singleElement()
        .satisfies(f -> assertThat(f.severity()).isEqualTo(edge.severity()))
        .satisfies(f -> assertThat(f.field()).isEqualTo(edge.about()));
  }

  /**
   * Holds for whatever else is found on the far side, too: no finding leaves the bander to guess.
   */
  @ParameterizedTest
  @MethodSource("edges")
  void saysFieldAndValueAndWhatWouldFit(RuleEdges.Edge edge) {
    assertThat(findings(edge.fails()))
        .filteredOn(f -> IDS.contains(f.rule()))
        .allSatisfy(
            f -> {
              FieldSpec spec = Fenwick.form().spec(f.field());
              String value = edge.fails().record().value(f.field()).orElseThrow().text();
              assertThat(f.shown()).contains(spec.label()).contains(value).endsWith(".");
              assertThat(f.spoken()).isNotBlank().doesNotContainPattern("[0-9]");
            })
        .filteredOn(f -> f.rule().equals(edge.rule()))
        .allSatisfy(f -> assertThat(f.shown()).contains(edge.fit()));
  }

  @ParameterizedTest
  @MethodSource("edges")
  void reviewFindsWhatTheCheckFinds(RuleEdges.Edge edge) {
    assertThat(RULES.review(edge.fails().record(), KNOWN, edge.fails().record().capturedAt()))
        .extracting(Finding::rule)
        .contains(edge.rule());
  }
}
