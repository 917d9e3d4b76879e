package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole birds as banders have them in the hand. */
class BirdRulesTest {

  private static final Rules RULES =
      new Rules(Fenwick.form(), Fenwick.reference(), Fenwick.policy());
  private static final String NUTHATCH = "SPECIES=WBNU SEX=M WING=92 TAIL=47 TARSUS=19.1 MASS=22.3";

  private static List<Finding> review(String day, String fields) {
    RuleEdges.Bird bird = RuleEdges.bird(day, fields);
    return RULES.review(bird.record(), RuleEdges.known(), bird.record().capturedAt());
  }

  private static List<String> check(String day, String fields) {
    return check(day, fields, Known.nothing());
  }

  private static List<String> check(String day, String fields, Known known) {
    RuleEdges.Bird bird = RuleEdges.bird(day, fields);
    return RULES.check(bird.record(), bird.filled(), known, bird.record().capturedAt()).stream()
        .map(f -> f.rule() + " " + f.severity())
        .toList();
  }

  /** Common practice, no published source. */
  @ParameterizedTest
  @ValueSource(strings = {"SY", "ASY", "AHY"})
  void takesAnOrdinaryNuthatchInMarchWithoutAQuestion(String age) {
    assertThat(review("2026-03-14", NUTHATCH + " AGE=" + age))
        .extracting(Finding::severity)
        .doesNotContain(Finding.Severity.ASKS, Finding.Severity.REFUSED);
  }

  /** Common practice, no published source. */
  @Test
  void refusesAHatchingYearBirdInMarch() {
    assertThat(check("2026-03-14", "SPECIES=WBNU AGE=HY")).containsExactly("age.date REFUSED");
  }

  /** Common practice, no published source. */
  @Test
  void offers92AndItsSlipFor29() {
    assertThat(review("2026-03-14", "SPECIES=WBNU WING=29"))
        .singleElement()
        .satisfies(f -> assertThat(f.severity()).isEqualTo(Finding.Severity.ASKS))
        .satisfies(f -> assertThat(f.shown()).contains("92 would fit (two digits swapped)"))
        .satisfies(f -> assertThat(f.spoken()).endsWith("perhaps nine two"));
  }

  private static Stream<LocalDate> days() {
    return LocalDate.of(2026, 1, 1).datesUntil(LocalDate.of(2027, 1, 1));
  }

  /**
   * Each time a bird passes 31 December it goes up one class: Bird Banding Laboratory, "Age (Year
   * Class) and Sex Codes". A bird called HY on the last day of 2025 is SY on every day of 2026.
   */
  @ParameterizedTest
  @MethodSource("days")
  void lastYearsBirdIsInItsSecondYearOnEveryDay(LocalDate day) {
    Known known =
        new Known(
            BandLedger.empty(),
            Captures.of(
                List.of(RuleEdges.past("2025-12-31", "BAND=2841-55601 SPECIES=WBNU AGE=HY")),
                Fenwick.ZONE));
    String bird = "KIND=R BAND=2841-55601 SPECIES=WBNU AGE=";
    assertThat(check(day.toString(), bird + "SY", known)).noneMatch(f -> f.startsWith("age."));
    List<String> young = check(day.toString(), bird + "HY", known);
    if (day.getMonthValue() <= 3) {
      assertThat(young).contains("age.date REFUSED");
    } else {
      assertThat(young).doesNotContain("age.date REFUSED");
    }
  }

  @Test
  void asksAboutAnAgeOutOfSeasonUnlessTheHistoryProvesIt() {
    Known known =
        new Known(
            BandLedger.empty(),
            Captures.of(
                List.of(RuleEdges.past("2025-10-01", "BAND=2841-55601 SPECIES=WBNU AGE=AHY")),
                Fenwick.ZONE));
    String bird = "KIND=R BAND=2841-55601 SPECIES=WBNU AGE=ASY";
    assertThat(check("2026-10-01", bird, known)).noneMatch(f -> f.startsWith("age.date"));
    assertThat(check("2026-10-01", bird)).contains("age.date ASKS");
  }

  /** The answer stands with the field that was being filled when the question came. */
  @Test
  void asksForMissingEvidenceOnceOnly() {
    RuleEdges.Bird bird =
        RuleEdges.bird("2026-06-01", "SPECIES=WBNU HOW_AGED=SK MASS=22.3 STATUS=300");
    assertThat(
            RULES.check(bird.record(), bird.filled(), Known.nothing(), bird.record().capturedAt()))
        .extracting(Finding::rule)
        .contains("how-aged.skull");
    Entry mass = bird.record().entry(FieldId.MASS).orElseThrow();
    CaptureRecord kept =
        bird.record()
            .with(
                FieldId.MASS,
                new Entry(mass.value(), mass.provenance(), mass.at(), List.of("how-aged.skull")));
    assertThat(RULES.check(kept, bird.filled(), Known.nothing(), kept.capturedAt()))
        .extracting(Finding::rule)
        .doesNotContain("how-aged.skull");
  }
}
