package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.calamus.core.form.BandSizes;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.EuringField;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The program's code tables against the published lists that their headers name. */
class CodeTablesTest {

  private static final TableFiles TABLES = new TableFiles(Optional.empty());
  private static final BandSizes SIZES = TABLES.bandSizes();

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      textBlock =
          """
          # table | ours | the Laboratory's, keypad | EURING's, keypad | first of ours for EURING's
          # Bird Banding Laboratory, "Age (Year Class) and Sex Codes"; EURING 2000+, field Age (second-hand)
          age | U   | U   | 0 | 2 | 2  | U
          age | AHY | AHY | 1 | 4 | 4  | AHY
          age | HY  | HY  | 2 | 3 | 3  | HY
          age | L   | L   | 4 | 1 | 1  | L
          age | SY  | SY  | 5 | 5 | 5  | SY
          age | ASY | ASY | 6 | 6 | 6  | ASY
          age | TY  | TY  | 7 | 7 | 7  | TY
          age | ATY | ATY | 8 | 8 | 8  | ATY
          age | 4Y  | -   | - | 9 | 9  | 4Y
          age | A4Y | -   | - | A | 10 | A4Y
          age | 5Y  | -   | - | B | 11 | 5Y
          age | 6Y  | -   | - | - | -  | -
          # the same page; EURING 2000+, field Sex (second-hand)
          sex | U | U | 0 | U | 0 | U
          sex | M | M | 4 | M | 4 | M
          sex | F | F | 5 | F | 5 | F
          # the Laboratory's how-sexed codes (second-hand); EURING 2000+, field Sexing method (second-hand)
          how-sexed | BP | BP | 8  | B | 8  | BP
          how-sexed | CP | CP | 9  | C | 9  | CP
          how-sexed | CL | CL | 10 | E | 10 | CL
          how-sexed | DN | DN | 30 | D | 30 | DN
          how-sexed | LL | LL | 31 | L | 31 | LL
          how-sexed | PL | PL | 2  | P | 2  | PL
          how-sexed | WL | WL | 15 | S | 15 | WL
          how-sexed | TL | TL | 14 | S | 14 | WL
          how-sexed | BO | BO | 22 | A | 22 | BO
          how-sexed | IC | IC | 26 | - | -  | -
          # MAPS scale (second-hand); EURING 2000+, field Brood patch (second-hand)
          brood-patch | 0 | 0 | 0 | 0 | 0 | 0
          brood-patch | 5 | 5 | 5 | 5 | 5 | 5
          brood-patch | P | - | - | P | 9 | P
          # MAPS scale (second-hand); Kaiser 1993, 0 to 8
          fat | 7 | 7 | 7 | 7 | 7 | 7
          fat | 8 | - | - | 8 | 8 | 8
          """)
  void mapsOursToTheSetsAndBack(
      String table,
      String ours,
      String laboratory,
      String keys,
      String euring,
      String euringKeys,
      String first) {
    CodeTable inLaboratory = TABLES.codes(table, CodeSet.LABORATORY);
    CodeTable inEuring = TABLES.codes(table, CodeSet.EURING);
    assertThat(inLaboratory.inSet(ours)).isEqualTo(Optional.ofNullable(laboratory));
    assertThat(inLaboratory.byCode(ours).map(CodeTable.Row::digits))
        .isEqualTo(Optional.ofNullable(keys));
    assertThat(inEuring.inSet(ours)).isEqualTo(Optional.ofNullable(euring));
    assertThat(inEuring.byCode(ours).map(CodeTable.Row::digits))
        .isEqualTo(Optional.ofNullable(euringKeys));
    assertThat(Optional.ofNullable(euring).flatMap(inEuring::ofSet))
        .isEqualTo(Optional.ofNullable(first));
  }

  @ParameterizedTest
  @CsvSource({
    "skull, 012345678, 7", // MAPS Manual, from memory: 0 to 6, and 8
    "cloacal-protuberance, 0123, ''", // MAPS Manual, second-hand
    "brood-patch, 012345, ''", // MAPS Manual, second-hand
    "fat, 01234567, ''", // MAPS Manual, second-hand
    "body-moult, 01234, ''", // MAPS Manual, from memory
    "flight-moult, NASJ, ''", // MAPS Manual, from memory
    "feather-wear, 012345, ''", // MAPS Manual, from memory
    "juvenal-plumage, 0123, ''", // MAPS Manual, from memory
    "disposition, DSWLBETIOPR, ''" // MAPS Manual, from memory
  })
  void hasTheScoresOfTheScale(String table, String codes, String without) {
    List<String> expected =
        codes
            .chars()
            .mapToObj(c -> String.valueOf((char) c))
            .filter(c -> !c.equals(without))
            .toList();
    assertThat(TABLES.codes(table).rows()).extracting(CodeTable.Row::code).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "age",
        "sex",
        "kind",
        "release",
        "how-aged",
        "how-sexed",
        "skull",
        "cloacal-protuberance",
        "brood-patch",
        "fat",
        "body-moult",
        "flight-moult",
        "feather-wear",
        "juvenal-plumage",
        "status",
        "disposition",
        "band-size",
        "leg-gauge"
      })
  void everyCodeIsMappedOrListedAsWithoutOneInEachSet(String name) {
    List<String> laboratory = all(TABLES.codes(name, CodeSet.LABORATORY));
    CodeTable euring = TABLES.codes(name, CodeSet.EURING);
    assertThat(all(euring)).containsExactlyInAnyOrderElementsOf(laboratory);
    for (CodeTable table : List.of(TABLES.codes(name), euring)) {
      assertThat(table.rows()).extracting(r -> r.own().isEmpty()).containsOnly(hasNone(table));
      assertThat(table.rows()).allSatisfy(r -> assertThat(r.digits()).isNotEmpty());
      assertThat(table.rows()).extracting(CodeTable.Row::digits).doesNotHaveDuplicates();
      assertThat(table.rows()).extracting(CodeTable.Row::words).doesNotHaveDuplicates();
    }
  }

  private static boolean hasNone(CodeTable table) {
    return table.rows().get(0).own().isEmpty();
  }

  private static List<String> all(CodeTable table) {
    List<String> codes = new java.util.ArrayList<>(table.elsewhere());
    table.rows().forEach(r -> codes.add(r.code()));
    return codes;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      textBlock =
          """
          # Bird Banding Laboratory, "Technical Specifications for Band Sizes": size | inches | larger | smaller
          X   | -     | -   | -
          0A  | 0.078 | 0   | -
          0   | 0.083 | 1C  | 0A
          1C  | 0.091 | 1   | 0
          1   | 0.094 | 1B  | 1C
          1B  | 0.109 | 1P  | 1
          1P  | 0.112 | 1A  | 1B
          1A  | 0.125 | 2   | 1P
          2   | 0.156 | 3   | 1A
          3   | 0.188 | 3B  | 2
          3B  | 0.203 | 3A  | 3
          3A  | 0.219 | 4   | 3B
          7A  | 0.438 | 7BS | 6
          7AS | 0.438 | 7BS | 6
          9C  | 1.125 | -   | 9
          """)
  void knowsTheNextLargerAndSmallerSize(String size, String inches, String larger, String smaller) {
    assertThat(SIZES.size(size).orElseThrow().inches().map(Object::toString))
        .isEqualTo(Optional.ofNullable(inches));
    assertThat(SIZES.larger(size).map(BandSizes.Size::code)).isEqualTo(Optional.ofNullable(larger));
    assertThat(SIZES.smaller(size).map(BandSizes.Size::code))
        .isEqualTo(Optional.ofNullable(smaller));
  }

  @Test
  void listsTheSizesInTheOrderOfTheirDiameters() {
    assertThat(SIZES.byDiameter()).isEqualTo(SIZES.sizes()).hasSize(29);
  }

  @ParameterizedTest
  @CsvSource({"2840, 0A", "2840, X", "820, 1", "1552, 2", "1243, 3B", "0994, 4A", "888, 8"})
  void allowsTheSizesOfAPrefixsLastDigit(String prefix, String size) {
    assertThat(SIZES.allowedBy(prefix)).extracting(BandSizes.Size::code).contains(size);
    assertThat(SIZES.allowedBy("1552")).extracting(BandSizes.Size::code).containsExactly("2");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          # the examples of the EURING Exchange Code's manual (second-hand, from a transcription's tests)
          identification number | Z6408      | Z.....6408
          identification number | CD52065    | CD...52065
          species mentioned     | 12430      | 12430
          date                  | 2006-08-11 | 11082006
          date                  | 1971-10-08 | 08101971
          time                  | ~~         | ----
          brood size            | ~~         | --
          sex mentioned         | ~~         | U
          distance              | 280        | 00280
          direction             | 241        | 241
          elapsed time          | 97         | 00097
          wing length           | 63.5       | 63.5
          mass                  | 10.0       | 10
          # by the lengths, kinds and steps of the table (second-hand)
          time                  | 08:40      | 0840
          wing length           | 63.3       | 63.5
          wing length           | 92         | 92
          mass                  | 11.44      | 11.4
          ringing scheme        | esa        | ESA
          age mentioned         | A          | A
          # a number without letters: from memory
          identification number | 2841-55601 | .284155601
          """)
  void writesAValueIntoItsField(String field, String value, String written) {
    assertThat(field(field).format(value)).contains(written);
  }

  @ParameterizedTest
  @CsvSource({
    "identification number, AB1234567890",
    "date, 11.8.2006",
    "time, 8:40",
    "sex mentioned, FM",
    "age mentioned, 10",
    "species mentioned, 123456",
    "mass, heavy"
  })
  void writesNothingThatDoesNotFit(String field, String value) {
    assertThat(field(field).format(value)).isEmpty();
  }

  private static EuringField field(String name) {
    return TABLES.euringFields().stream()
        .filter(f -> f.name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
