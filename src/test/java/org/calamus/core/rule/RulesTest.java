package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Unit;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every rule on both sides of its edge. */
class RulesTest {

  private static final Instant NOW = Instant.parse("2026-03-14T06:30:00Z");
  private static final Rules RULES =
      new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy());
  private static final Known KNOWN =
      new Known(BandLedger.empty().withUsed(new BandNumber("2841", "55601")), Captures.none());

  /**
   * The last value that passes and the first that does not; where there are two edges, two cases.
   * The species in the hand is a white-breasted nuthatch.
   */
  private enum Limit {
    SPECIES("species.listed", FieldId.SPECIES, "code:WBNU", "code:WBNX", "species table"),
    AGE("age.listed", FieldId.AGE, "code:SY", "code:XY", "age table"),
    SEX("sex.listed", FieldId.SEX, "code:M", "code:X", "sex table"),
    WING_LOW("wing.range", FieldId.WING, "25", "24.9", "25 to 400 mm"),
    WING_HIGH("wing.range", FieldId.WING, "400", "400.5", "25 to 400 mm"),
    WING_KIND("wing.range", FieldId.WING, "92", "code:92", "number"),
    MASS_LOW("mass.range", FieldId.MASS, "1.5", "1.49", "1.5 to 1500 g"),
    MASS_HIGH("mass.range", FieldId.MASS, "1500", "1500.01", "1.5 to 1500 g"),
    WING_PRECISION("wing.precision", FieldId.WING, "92.5", "92.55", "one decimal"),
    MASS_PRECISION("mass.precision", FieldId.MASS, "22.35", "22.355", "two decimal"),
    WING_SPECIES_LOW("wing.species", FieldId.WING, "77", "76.5", "77 to 100 mm"),
    WING_SPECIES_HIGH("wing.species", FieldId.WING, "100", "100.5", "77 to 100 mm"),
    MASS_SPECIES_LOW("mass.species", FieldId.MASS, "15.8", "15.7", "15.8 to 31.5 g"),
    MASS_SPECIES_HIGH("mass.species", FieldId.MASS, "31.5", "31.6", "15.8 to 31.5 g");

    private final String rule;
    private final FieldId field;
    private final FieldValue passes;
    private final FieldValue fails;
    private final String wouldFit;

    Limit(String rule, FieldId field, String passes, String fails, String wouldFit) {
      this.rule = rule;
      this.field = field;
      this.passes = value(field, passes);
      this.fails = value(field, fails);
      this.wouldFit = wouldFit;
    }

    private static FieldValue value(FieldId field, String text) {
      if (text.startsWith("code:")) {
        return new FieldValue.Code(text.substring(5));
      }
      return new FieldValue.Measure(
          new BigDecimal(text), field == FieldId.WING ? Unit.MILLIMETRE : Unit.GRAM);
    }
  }

  private static CaptureRecord nuthatch() {
    CaptureRecord empty = new CaptureRecord(7, NOW, "Fenwick Marsh", "QX", Map.of());
    return empty.with(FieldId.SPECIES, entry(new FieldValue.Code("WBNU")));
  }

  private static Entry entry(FieldValue value) {
    return new Entry(value, new Provenance(Provenance.Way.SAID, ""), NOW, List.of());
  }

  private static List<Finding> findings(FieldId field, FieldValue value) {
    return RULES.check(nuthatch().with(field, entry(value)), field, KNOWN, NOW);
  }

  private static List<String> ids(FieldId field, FieldValue value) {
    return findings(field, value).stream().map(Finding::rule).toList();
  }

  @ParameterizedTest
  @EnumSource(Limit.class)
  void findsNothingOnTheNearSideOfTheEdge(Limit edge) {
    assertThat(ids(edge.field, edge.passes)).doesNotContain(edge.rule);
  }

  @ParameterizedTest
  @EnumSource(Limit.class)
  void findsTheRuleOnTheFarSideOfTheEdge(Limit edge) {
    assertThat(ids(edge.field, edge.fails)).contains(edge.rule);
  }

  @ParameterizedTest
  @EnumSource(Limit.class)
  void saysFieldAndValueAndWhatWouldFit(Limit edge) {
    Finding finding =
        findings(edge.field, edge.fails).stream()
            .filter(f -> f.rule().equals(edge.rule))
            .findFirst()
            .orElseThrow();
    FieldSpec spec = Fenwick.form().spec(edge.field);
    assertThat(finding.field()).isEqualTo(edge.field);
    assertThat(finding.shown())
        .startsWith(spec.label().split(" ")[0])
        .contains(valueShown(edge))
        .endsWith(".");
    assertThat(finding.shown()).contains(edge.wouldFit);
    assertThat(finding.spoken()).isNotBlank().doesNotContainPattern("[0-9]");
  }

  private static String valueShown(Limit edge) {
    return edge == Limit.WING_KIND ? "number" : edge.fails.text();
  }

  @Test
  void everyRuleOfAFieldAndOfTheBirdHasAnEdge() {
    List<String> tested =
        Stream.concat(
                Arrays.stream(Limit.values()).map(e -> e.rule),
                RuleEdges.all().stream().map(RuleEdges.Edge::rule))
            .distinct()
            .toList();
    List<String> rules =
        Stream.of(
                FieldRules.all(),
                AgeRules.all(),
                SexRules.all(),
                HowRules.all(),
                MeasureRules.all())
            .flatMap(List::stream)
            .map(Rule::id)
            .toList();
    assertThat(rules).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(tested);
  }

  @Test
  void everyRuleHasASource() {
    assertThat(Rules.catalogue()).allSatisfy(line -> assertThat(line).matches("\\S+: \\S.+"));
  }

  @ParameterizedTest
  @EnumSource(Limit.class)
  void onlyDoubtsWhatIsPossible(Limit edge) {
    List<String> doubts = List.of("wing.species", "mass.species");
    Finding finding =
        findings(edge.field, edge.fails).stream()
            .filter(f -> f.rule().equals(edge.rule))
            .findFirst()
            .orElseThrow();
    assertThat(finding.severity())
        .isEqualTo(doubts.contains(edge.rule) ? Finding.Severity.ASKS : Finding.Severity.REFUSED);
  }

  /** A male's wing and mass as banders find them: common practice, no published source. */
  @Test
  void takesAnOrdinaryNuthatchWithoutAQuestion() {
    assertThat(findings(FieldId.WING, Limit.value(FieldId.WING, "92"))).isEmpty();
    assertThat(findings(FieldId.MASS, Limit.value(FieldId.MASS, "22.3"))).isEmpty();
  }

  /** Common practice, no published source. */
  @Test
  void asksWhether92WasMeantFor29() {
    List<Finding> findings = findings(FieldId.WING, Limit.value(FieldId.WING, "29"));
    assertThat(findings).singleElement().extracting(Finding::shown).asString().contains("92 would");
    assertThat(findings.get(0).spoken()).isEqualTo("wing two nine is small. perhaps nine two");
  }

  @Test
  void offersTheDecimalPointThatWasLost() {
    assertThat(findings(FieldId.MASS, Limit.value(FieldId.MASS, "223")).get(0).shown())
        .contains("22.3 would fit");
    assertThat(findings(FieldId.MASS, Limit.value(FieldId.MASS, "2.23")).get(0).shown())
        .contains("22.3 would fit");
  }

  @Test
  void holdsTheMeasuresAgainstASpeciesThatIsGivenAfterThem() {
    CaptureRecord record =
        nuthatch()
            .with(FieldId.WING, entry(Limit.value(FieldId.WING, "92")))
            .with(FieldId.SPECIES, entry(new FieldValue.Code("GCKI")));
    assertThat(RULES.check(record, FieldId.SPECIES, KNOWN, NOW))
        .extracting(Finding::rule, Finding::field)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("wing.species", FieldId.WING));
  }

  @Test
  void refusalsComeBeforeDoubts() {
    List<Finding> findings = findings(FieldId.WING, Limit.value(FieldId.WING, "9"));
    assertThat(findings)
        .extracting(Finding::severity)
        .startsWith(Finding.Severity.REFUSED)
        .contains(Finding.Severity.ASKS);
  }

  @Test
  void hasNoDoubtWhereTheTableHasNoRange() {
    CaptureRecord unlisted = new CaptureRecord(7, NOW, "Fenwick Marsh", "QX", Map.of());
    CaptureRecord record = unlisted.with(FieldId.WING, entry(Limit.value(FieldId.WING, "350")));
    assertThat(RULES.check(record, FieldId.WING, KNOWN, NOW)).isEmpty();
  }
}
