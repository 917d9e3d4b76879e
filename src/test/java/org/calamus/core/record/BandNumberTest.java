package org.calamus.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Source of the facts: U.S. Geological Survey, Bird Banding Laboratory, North American Bird Banding
 * Manual, page "Band numbers": a prefix of three or four digits and a suffix of five; strings of
 * one hundred, of which the first ends in 01 and the last in 00 (first 888-88801, last 888-88900);
 * the last band of a prefix is -00000. The other rows are worked out from these.
 */
class BandNumberTest {

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    // band, next, position in its string, first of its string
    "888-88801, 888-88802, 1, 888-88801", // the manual's first
    "888-88900, 888-88901, 100, 888-88801", // the manual's last
    "888-88800, 888-88801, 100, 888-88701", // the one before the manual's first
    "888-88899, 888-88900, 99, 888-88801",
    "2841-55601, 2841-55602, 1, 2841-55601",
    "2841-55699, 2841-55700, 99, 2841-55601",
    "2841-55999, 2841-56000, 99, 2841-55901",
    "2841-99999, 2841-00000, 99, 2841-99901",
    "2841-00000, 2841-00001, 100, 2841-99901", // the manual's last of a prefix
    "2841-00001, 2841-00002, 1, 2841-00001",
    "2841-00100, 2841-00101, 100, 2841-00001"
  })
  void knowsItsPlaceInItsString(String number, String next, int position, String first) {
    assertThat(band(number).successor()).isEqualTo(band(next));
    assertThat(band(number).positionInString()).isEqualTo(position);
    assertThat(band(number).firstOfString()).isEqualTo(band(first));
  }

  @Test
  void onlyTheSuffixOfZerosIsTheLastOfItsPrefix() {
    assertThat(band("2841-00000").isLastOfPrefix()).isTrue();
    assertThat(band("2841-99999").isLastOfPrefix()).isFalse();
    assertThat(band("2841-00001").isLastOfPrefix()).isFalse();
  }

  @Test
  void aHundredSuccessorsOfAFirstBandMakeItsString() {
    BandNumber first = band("2841-99901");
    BandNumber at = first;
    for (int position = 1; position <= 100; position++) {
      assertThat(at.positionInString()).isEqualTo(position);
      assertThat(at.firstOfString()).isEqualTo(first);
      assertThat(at).isGreaterThanOrEqualTo(first);
      at = at.successor();
    }
    assertThat(at.positionInString()).isEqualTo(1);
  }

  @Test
  void everySuccessorComesAfterItsBandExceptBehindTheLast() {
    Random random = new Random(1970);
    for (int i = 0; i < 500; i++) {
      String digits = String.valueOf(100_000 + random.nextInt(99_999) + 1).substring(1);
      BandNumber band = new BandNumber("712", digits);
      assertThat(band.successor()).isGreaterThan(band);
    }
    assertThat(band("712-00000")).isGreaterThan(band("712-99999"));
  }

  @ParameterizedTest
  @CsvSource({"28415560", "284155601", "284-15560", "2841-55601"})
  void parseReadsEightAndNineDigitsWithAndWithoutHyphen(String text) {
    assertThat(band(text).text().replace("-", "")).isEqualTo(text.replace("-", ""));
  }

  @ParameterizedTest
  @CsvSource({
    "''",
    "2841556",
    "2841556011",
    "28-4155601",
    "28415-5601",
    "2841 55601",
    "T1234-55601"
  })
  void parseReadsNothingElse(String text) {
    assertThat(BandNumber.parse(text)).isEmpty();
  }

  @Test
  void cannotBeMadeOfPartsOfAnotherLength() {
    assertThatThrownBy(() -> new BandNumber("28", "55601"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("28-55601");
    assertThatThrownBy(() -> new BandNumber("2841", "5560"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void endingInReplacesTheLastDigits() {
    assertThat(band("2841-55602").endingIn("13")).isEqualTo(band("2841-55613"));
    assertThat(band("2841-55602").endingIn("613")).isEqualTo(band("2841-55613"));
    assertThat(band("2841-55602").endingIn("00001")).isEqualTo(band("2841-00001"));
  }
}
