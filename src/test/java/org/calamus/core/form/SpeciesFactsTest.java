package org.calamus.core.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The measures and band sizes of the program's species against what others have published. */
class SpeciesFactsTest {

  private static final Optional<String> MALE = Optional.of("M");

  private static Species species(String code) {
    return Fenwick.species().byCode(code).orElseThrow(() -> new AssertionError(code));
  }

  private static List<Species> all() {
    return Fenwick.species().species();
  }

  @Test
  void aMaleWhiteBreastedNuthatchLiesInItsRanges() {
    // common practice, no published source
    Species nuthatch = species("WBNU");
    assertThat(nuthatch.bandSizes(MALE)).containsExactly("1B", "1");
    assertThat(nuthatch.isOnlySize()).isFalse();
    assertHolds(nuthatch, FieldId.WING, MALE, "92");
    assertHolds(nuthatch, FieldId.TAIL, MALE, "47");
    assertHolds(nuthatch, FieldId.TARSUS, MALE, "19.1");
    assertHolds(nuthatch, FieldId.MASS, MALE, "22.3");
  }

  @Test
  void kingletsTakeNoOtherBandThan0A() {
    // Bird Banding Laboratory, Memorandum to All Banders 79, January 1996, item 2
    assertThat(all().stream().filter(Species::isOnlySize))
        .extracting(Species::code)
        .containsExactlyInAnyOrder("GCKI", "RCKI");
    assertThat(species("GCKI").bandSizes(MALE)).containsExactly("0A");
    assertThat(species("RCKI").bandSizes(Optional.empty())).containsExactly("0A");
  }

  @Test
  void aJuncoTakesTheSizesThatItsBandersChooseAmong() {
    // toughlittlebirds.com, "Tools of the trade: banding", 6 May 2012: 0, 1C or 1; size 1C was
    // discontinued in 1999 (Memorandum to All Banders 83, item 10)
    assertThat(species("SCJU").bandSizes(MALE)).containsExactlyInAnyOrder("0", "1");
  }

  @Test
  void everyBandSizeIsMade() {
    // Bird Banding Laboratory, Technical Specifications for Band Sizes, without the discontinued 1C
    Set<String> made =
        Set.of(("X 0A 0 1 1B 1P 1A 2 3 3B 3A 4 4A 5 6 7A 7B 7D 8 8A 9 9C").split(" "));
    for (Species species : all()) {
      assertThat(sizes(species)).as(species.code()).isNotEmpty().isSubsetOf(made);
    }
  }

  private static Set<String> sizes(Species species) {
    return Stream.of("F", "M", "U")
        .flatMap(sex -> species.bandSizes(Optional.of(sex)).stream())
        .collect(Collectors.toSet());
  }

  /**
   * Means of AVONET (Tobias et al. 2022, Ecology Letters 25:581-597, CC BY 4.0): wing, tail and
   * tarsus in millimetres. The ranges of species without masses by sex follow from them alone.
   */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          WBNU,  88.6, 48.8, 18.5
          YBSA, 124.8, 74.0, 20.5
          LEFL,  61.1, 50.8, 15.9
          REVI,  77.5, 52.7, 19.5
          TRES, 115.9, 54.0, 12.2
          BCCH,  64.4, 61.7, 16.8
          SWTH,  96.8, 67.1, 29.6
          BHVI,  75.3, 51.4, 18.6
          OVEN,  73.2, 50.4, 22.3
          TEWA,  62.5, 42.1, 18.3
          RBGR, 101.3, 74.6, 21.6
          PISI,  72.4, 48.3, 13.9
          TUTI,  77.9, 68.6, 20.5
          NOWA,  73.9, 49.9, 23.0
          SWSP,  62.3, 57.0, 21.9
          """)
  void lengthsAreMadeOfThePublishedMeans(String code, String wing, String tail, String tarsus) {
    Species species = species(code);
    assertHolds(species, FieldId.WING, MALE, wing);
    assertThat(species.range(FieldId.WING, MALE)).contains(around(wing, "0.88", "1.12", 0));
    assertHolds(species, FieldId.TAIL, MALE, tail);
    assertThat(species.range(FieldId.TAIL, MALE)).contains(around(tail, "0.85", "1.15", 0));
    assertHolds(species, FieldId.TARSUS, MALE, tarsus);
    assertThat(species.range(FieldId.TARSUS, MALE)).contains(around(tarsus, "0.85", "1.15", 1));
  }

  private static Range around(String mean, String least, String most, int decimals) {
    BigDecimal middle = new BigDecimal(mean);
    return new Range(
        middle.multiply(new BigDecimal(least)).setScale(decimals, RoundingMode.FLOOR),
        middle.multiply(new BigDecimal(most)).setScale(decimals, RoundingMode.CEILING));
  }

  /**
   * Means and standard deviations in grams of Dunning 2008, CRC Handbook of Avian Body Masses, 2nd
   * ed. The deviation of the female indigo bunting is a slip and is held at 0.15 of the mean.
   */
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          RTHU, M,   2.9, 0.2
          RTHU, F,   3.3, 0.3
          HAWO, F,  62.5, 2.0
          HAWO, M,  70.0, 3.2
          SSHA, M, 103.0, 6.4
          SSHA, F, 174.0, 10.4
          RWBL, F,  39.5, 2.3
          RWBL, M,  65.3, 3.6
          BHCO, F,  38.1, 2.5
          COGR, M, 120.0, 7.1
          COYE, F,   9.2, 0.6
          COYE, M,   9.7, 0.6
          EATO, F,  38.8, 2.3
          NOCA, M,  43.5, 2.9
          WOTH, F,  52.5, 4.4
          INBU, F,  14.4, 9.6
          INBU, M,  15.0, 0.7
          """)
  void massesBySexAreMadeOfThePublishedMeans(String code, String sex, String mean, String sd) {
    BigDecimal m = new BigDecimal(mean);
    BigDecimal s = new BigDecimal(sd).min(m.multiply(new BigDecimal("0.15")));
    BigDecimal half = m.multiply(new BigDecimal("0.5"));
    BigDecimal least =
        m.subtract(s.multiply(new BigDecimal(4))).min(m.multiply(new BigDecimal("0.75"))).max(half);
    BigDecimal most = m.add(s.multiply(new BigDecimal(6))).max(m.multiply(new BigDecimal("1.5")));
    Range range = species(code).range(FieldId.MASS, Optional.of(sex)).orElseThrow();
    assertThat(range.holds(m)).isTrue();
    assertThat(range.least().subtract(least).abs()).isLessThanOrEqualTo(new BigDecimal("0.05"));
    assertThat(range.most().subtract(most).abs()).isLessThanOrEqualTo(new BigDecimal("0.05"));
  }

  @Test
  void theRangeOfASexLiesWithinThatOfTheSpecies() {
    for (Species species : all()) {
      species
          .ranges()
          .forEach(
              (field, ranges) ->
                  ranges
                      .own()
                      .values()
                      .forEach(
                          own -> {
                            Range whole = ranges.whole().orElseThrow();
                            assertThat(whole.holds(own.least()) && whole.holds(own.most()))
                                .as(species.code() + " " + field)
                                .isTrue();
                          }));
    }
  }

  @Test
  void everyCellThatIsFilledNamesItsSource() {
    for (Species species : all()) {
      assertThat(species.sources()).as(species.code()).contains("code ", "sizes ");
      for (FieldId field :
          List.of(FieldId.WING, FieldId.TAIL, FieldId.TARSUS, FieldId.CULMEN, FieldId.MASS)) {
        assertThat(species.sources().contains(field.key()))
            .as(species.code() + " " + field)
            .isEqualTo(species.range(field, Optional.empty()).isPresent());
      }
      assertThat(species.sources().contains("plumage"))
          .as(species.code())
          .isEqualTo(species.plumage() != Species.Plumage.UNKNOWN);
      assertThat(species.sources().contains("brood"))
          .as(species.code())
          .isEqualTo(species.broodPatch() != Species.BroodPatch.UNKNOWN);
    }
  }

  @Test
  void malesThatIncubateMayHaveABroodPatch() {
    // male blue-headed vireos do about half of the incubation by day: an abstract in Animal
    // Behaviour; woodpeckers and the rose-breasted grosbeak: from memory
    for (String code : List.of("BHVI", "DOWO", "HAWO", "RBGR")) {
      assertThat(species(code).broodPatch()).as(code).isEqualTo(Species.BroodPatch.BOTH);
    }
    // cowbirds are brood parasites: neither sex incubates
    assertThat(species("BHCO").broodPatch()).isEqualTo(Species.BroodPatch.NEITHER);
    assertThat(species("WBNU").broodPatch()).isEqualTo(Species.BroodPatch.FEMALE);
  }

  private static void assertHolds(
      Species species, FieldId field, Optional<String> sex, String amount) {
    assertThat(species.range(field, sex).orElseThrow().holds(new BigDecimal(amount)))
        .as(species.code() + " " + field + " " + amount)
        .isTrue();
  }
}
