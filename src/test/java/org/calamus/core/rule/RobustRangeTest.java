package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.calamus.adapter.files.TableFiles;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rule on paper, and on real birds: 344 penguins of three species (Gorman, Williams & Fraser
 * 2014, PLOS ONE 9:e90081, data CC0; package vega-datasets 3.2.1). The flipper stands for the wing,
 * the beak for the culmen.
 */
class RobustRangeTest {

  private record Measured(String species, String sex, FieldId field, BigDecimal amount) {}

  private static final List<String[]> BIRDS = birds();
  private static final List<Measured> MEASURES = measures();
  private static final StationSample SAMPLE = sample();

  private static List<String[]> birds() {
    try (InputStream in = RobustRangeTest.class.getResourceAsStream("/outside/penguins.tsv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(l -> !l.startsWith("#"))
          .skip(1)
          .map(l -> l.split("\t", -1))
          .toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<Measured> measures() {
    List<Measured> measures = new ArrayList<>();
    for (String[] bird : BIRDS) {
      if (bird[6].equals("MALE") || bird[6].equals("FEMALE")) {
        String sex = bird[6].substring(0, 1);
        measures.add(new Measured(bird[0], sex, FieldId.CULMEN, new BigDecimal(bird[2])));
        measures.add(new Measured(bird[0], sex, FieldId.WING, new BigDecimal(bird[4])));
        measures.add(new Measured(bird[0], sex, FieldId.MASS, new BigDecimal(bird[5])));
      }
    }
    return measures;
  }

  private static StationSample sample() {
    StationSample sample = StationSample.empty();
    for (Measured m : MEASURES) {
      sample = sample.with(m.species(), m.sex(), m.field(), m.amount());
    }
    return sample;
  }

  private static boolean isFlagged(Measured m, BigDecimal amount) {
    return !SAMPLE.range(m.species(), m.sex(), m.field()).orElseThrow().usual().holds(amount);
  }

  /**
   * Each is the longest beak of its species and sex; whether it was misread is not known, so both
   * count as false alarms: two in 999 amounts, 0.2 %. The birds are held against ranges that they
   * helped to make.
   */
  @Test
  void asksAboutTwoOfThePenguinsAmounts() {
    assertThat(BIRDS).hasSize(344);
    assertThat(MEASURES).hasSize(999);
    assertThat(MEASURES.stream().filter(m -> isFlagged(m, m.amount())))
        .extracting(m -> m.species() + " " + m.sex() + " " + m.field() + " " + m.amount())
        .containsExactlyInAnyOrder("Gentoo M CULMEN 59.6", "Chinstrap F CULMEN 58");
  }

  @Test
  void catchesEveryDecimalPointThatIsOnePlaceOff() {
    assertThat(MEASURES.stream().filter(m -> isFlagged(m, m.amount().movePointLeft(1))))
        .hasSize(999);
    assertThat(MEASURES.stream().filter(m -> isFlagged(m, m.amount().movePointRight(1))))
        .hasSize(999);
  }

  @Test
  void catchesEveryMassGivenAsAnotherMeasureAndEveryLengthGivenAsAMass() {
    List<Measured> masses = MEASURES.stream().filter(m -> m.field() == FieldId.MASS).toList();
    List<Measured> wings = MEASURES.stream().filter(m -> m.field() == FieldId.WING).toList();
    for (int i = 0; i < masses.size(); i++) {
      assertThat(isFlagged(masses.get(i), wings.get(i).amount())).isTrue();
      assertThat(isFlagged(wings.get(i), masses.get(i).amount())).isTrue();
    }
  }

  /**
   * A swap of the first two digits; one of equal digits, or of near ones, cannot be seen. 830 of
   * 912 were caught.
   */
  @Test
  void catchesMostSwapsOfTheFirstTwoDigits() {
    List<Measured> swapped = MEASURES.stream().filter(m -> !swapped(m).equals(m.amount())).toList();
    long caught = swapped.stream().filter(m -> isFlagged(m, swapped(m))).count();
    assertThat(caught * 100 / swapped.size()).isGreaterThanOrEqualTo(90);
  }

  private static BigDecimal swapped(Measured m) {
    String text = m.amount().toPlainString();
    return new BigDecimal("" + text.charAt(1) + text.charAt(0) + text.substring(2));
  }

  @Test
  void theSexTableRefusesThePointThatStandsForASexInTheData() {
    assertThat(BIRDS.stream().filter(b -> b[6].equals("."))).hasSize(1);
    assertThat(new TableFiles(Optional.empty()).codes("sex").byCode(".")).isEmpty();
  }

  private static List<BigDecimal> alternating(String low, String high, int count) {
    return IntStream.range(0, count)
        .mapToObj(i -> new BigDecimal(i % 2 == 0 ? low : high))
        .toList();
  }

  @Test
  void needsThirtyRecords() {
    assertThat(RobustRange.of(FieldId.WING, alternating("90", "94", 29))).isEmpty();
    RobustRange range = RobustRange.of(FieldId.WING, alternating("90", "94", 30)).orElseThrow();
    assertThat(range.median()).isEqualByComparingTo("92");
    assertThat(range.deviation()).isEqualByComparingTo("2");
    assertThat(range.usual().most()).isEqualByComparingTo("103.8608");
    assertThat(range.usual().least()).isEqualByComparingTo("80.1392");
  }

  @ParameterizedTest
  @CsvSource({"WING, 97, 103", "TAIL, 96, 104", "TARSUS, 99.4, 100.6", "MASS, 85, 115"})
  void isNeverNarrowerThanTheFloor(FieldId field, BigDecimal least, BigDecimal most) {
    RobustRange range = RobustRange.of(field, alternating("100", "100", 40)).orElseThrow();
    assertThat(range.usual().least()).isEqualByComparingTo(least);
    assertThat(range.usual().most()).isEqualByComparingTo(most);
  }
}
