package org.calamus.core.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.calamus.core.instrument.Settled.How;
import org.calamus.core.instrument.StabilityRule.EachReading;
import org.calamus.core.instrument.StabilityRule.WhenSettled;
import org.calamus.core.instrument.Weighing.Phase;
import org.calamus.core.record.Reading;
import org.calamus.core.record.Reading.Stability;
import org.calamus.core.record.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Series are written as readings: {@code =} before an amount stable, {@code ~} moving. */
class WeighingTest {

  private static final Instant BEGIN = Instant.parse("2026-05-02T05:30:00Z");

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # readings 200 ms apart, settled amounts
          # the mark: two equal stable readings in a row
          '=0 =22.3 =22.3',                          22.3
          '=0 =22.30 =22.3',                         22.3
          '=0 =22.3',                                none
          '=0 =22.3 =22.4',                          none
          '=0 =22.3 ~22.3 =22.3',                    none
          '=0 22.3 22.3',                            none
          # above the empty pan: 2 g
          '=0 =2.0 =2.0',                            none
          '=0 =2.1 =2.1',                            2.1
          # no mark, or never stable: 1.0 s, so six readings at five a second
          '0 0 22.3 22.3 22.3 22.3 22.3',            none
          '0 0 22.3 22.3 22.3 22.3 22.3 22.3',       22.3
          '0 0 ~22.3 ~22.2 ~22.4 ~22.3 ~22.3 ~22.2', 22.3
          # the spread: 0.2 g, from 15 g on; below that 0.1 g
          '0 22.3 22.5 22.3 22.3 22.4 22.4',         22.3
          '0 22.3 22.6 22.3 22.3 22.4 22.4',         none
          '0 11.4 11.5 11.4 11.4 11.4 11.5',         11.4
          '0 11.4 11.6 11.4 11.4 11.4 11.4',         none
          '0 15.0 15.2 15.0 15.0 15.1 15.0',         15.0
          '0 14.9 15.1 14.9 14.9 15.0 14.9',         none
          # a drift of 0.1 g a reading never agrees
          '0 20.0 20.1 20.2 20.3 20.4 20.5 20.6',    none
          # steps: the window must lie wholly behind the step
          '0 11.4 11.4 11.4 22.3 22.3 22.3 22.3 22.3', none
          '0 11.4 11.4 11.4 22.3 22.3 22.3 22.3 22.3 22.3', 22.3
          # zero, tare and drift are no load
          '=0 =0 =0.0 =-14.8 =-14.8 =0.2 =0.2 =0.3', none
          '=0 =1.1 =1.1 1.2 1.2 1.2 1.2 1.2 1.2',    none
          # a load that was there before the pan was seen empty
          '=14.8 =14.8 =14.8',                       none
          '=14.8 =14.8 =0 =11.4 =11.4',              11.4
          # once a load
          '=0 =22.3 =22.3 =22.3 =22.3',              22.3
          '=0 =22.3 =22.3 ~30.1 =30.1 =30.1',        22.3
          '=0 =22.3 =22.3 =0.4 =30.1 =30.1',         22.3
          '=0 =22.3 =22.3 =0.3 =30.1 =30.1',         22.3 30.1
          '=0 =22.3 =22.3 =-14.8 =30.1 =30.1',       22.3 30.1
          # one light reading is a hop, two are an empty pan
          '=0 =22.3 =22.3 ~0.1 =22.3 =22.3',         22.3
          '=0 =22.3 =22.3 ~0.1 ~0.0 =22.3 =22.3',    22.3 22.3
          '=0 =22.3 =22.3 0.1 1.0 0.1 =22.3 =22.3',  22.3
          # a hop in the middle of settling starts the window anew
          '0 22.3 22.3 22.3 0.1 22.3 22.3 22.3 22.3 22.3', none
          """)
  void stepSettlesWhatHasSettledAndNothingElse(String series, String amounts) {
    List<Settled> settled = run(series, 200);

    assertThat(amounts(settled)).isEqualTo(amounts);
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # milliseconds between readings, readings of the load, settled
          334, 4, 22.3
          333, 4, none
          334, 3, none
          500, 3, none
          500, 4, 22.3
          501, 4, none
          600, 9, none
          50, 20, none
          50, 21, 22.3
          """)
  void stepAsksForFourReadingsWithinOneToOneAndAHalfSeconds(long apart, int count, String amounts) {
    List<Settled> settled = run("0 " + "22.3 ".repeat(count).strip(), apart);

    assertThat(amounts(settled)).isEqualTo(amounts);
  }

  @Test
  void stepComparesStableReadingsOfASlowInstrument() {
    assertThat(amounts(run("=0 =22.3 =22.3", 5000))).isEqualTo("22.3");
  }

  @Test
  void stepKeepsTheDigitsAndTheLinesItRestsOn() {
    Settled marked = run("=0 ~21.9 =22.30 =22.30", 200).get(0);
    Settled agreed = run("0 22.3 22.2 22.4 22.30 22.4 22.2", 200).get(0);

    assertThat(marked.value().text()).isEqualTo("22.30");
    assertThat(marked.value().unit()).isEqualTo(Unit.GRAM);
    assertThat(marked.rawLines()).containsExactly("=22.30", "=22.30");
    assertThat(marked.how()).isEqualTo(How.MARKED_STABLE);
    assertThat(agreed.value().text()).isEqualTo("22.3");
    assertThat(agreed.rawLines()).containsExactly("22.3", "22.2", "22.4", "22.30", "22.4", "22.2");
    assertThat(agreed.how()).isEqualTo(How.READINGS_AGREED);
  }

  @Test
  void stepStartsAnewWhenTheClockIsSetBack() {
    Weighing weighing = Weighing.idle(WhenSettled.BIRDS);
    weighing = weighing.step(reading("=0"), BEGIN);
    for (int i = 0; i < 5; i++) {
      weighing = weighing.step(reading("22.3"), BEGIN.plusMillis(200 * i));
    }

    weighing = weighing.step(reading("22.3"), BEGIN.minusSeconds(3600));

    assertThat(weighing.settled()).isEmpty();
    assertThat(weighing.recent()).hasSize(1);
  }

  @Test
  void phaseFollowsTheLoad() {
    Weighing weighing = Weighing.idle(WhenSettled.BIRDS);
    List<Phase> phases = new ArrayList<>();
    long millis = 0;
    for (String each : "=22.3 =0 ~22 =22.3 =22.3 =22.3 =0".split(" ")) {
      weighing = weighing.step(reading(each), BEGIN.plusMillis(millis += 200));
      phases.add(weighing.phase());
    }

    assertThat(phases)
        .containsExactly(
            Phase.NOT_YET_EMPTY,
            Phase.EMPTY,
            Phase.LOADED,
            Phase.LOADED,
            Phase.TAKEN,
            Phase.TAKEN,
            Phase.EMPTY);
  }

  @Test
  void stepBelievesEachReadingWhereTheRuleSaysSo() {
    EachReading rule = new EachReading(new BigDecimal("1"));
    List<Settled> settled = run(rule, "92.5 92.5 ~91.0 1 1.1 -3", 200);

    assertThat(amounts(settled)).isEqualTo("92.5 92.5 1.1");
    assertThat(settled).allMatch(each -> each.how() == How.SENT_SINGLY);
  }

  private static List<Settled> run(String series, long apart) {
    return run(WhenSettled.BIRDS, series, apart);
  }

  private static List<Settled> run(StabilityRule rule, String series, long apart) {
    Weighing weighing = Weighing.idle(rule);
    List<Settled> settled = new ArrayList<>();
    Instant at = BEGIN;
    for (String each : series.split(" ")) {
      weighing = weighing.step(reading(each), at);
      weighing.settled().ifPresent(settled::add);
      at = at.plusMillis(apart);
    }
    return settled;
  }

  private static Reading reading(String text) {
    Stability stability =
        switch (text.charAt(0)) {
          case '=' -> Stability.STABLE;
          case '~' -> Stability.MOVING;
          default -> Stability.UNSTATED;
        };
    String amount = stability == Stability.UNSTATED ? text : text.substring(1);
    return new Reading(new BigDecimal(amount), Unit.GRAM, stability, text);
  }

  private static String amounts(List<Settled> settled) {
    return settled.isEmpty()
        ? "none"
        : String.join(" ", settled.stream().map(each -> each.value().text()).toList());
  }
}
