package org.calamus.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

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
    "T12345-55601"
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
    assertThatThrownBy(() -> new BandNumber("AB1", "55601"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new BandNumber("ABC", "12345678"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new BandNumber("", "12345678"))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Every suffix there is, against the manual's rules worked out with plain numbers. */
  @Test
  void allSuffixesOfAPrefixMakeAThousandStringsOfAHundred() {
    BandNumber at = band("888-00001");
    BandNumber before = at;
    for (int number = 1; number <= 100_000; number++) {
      boolean isRight =
          at.ordinal() == number
              && Integer.parseInt(at.suffix()) == number % 100_000
              && at.positionInString() == (number - 1) % 100 + 1
              && at.firstOfString().ordinal() == (number - 1) / 100 * 100L + 1
              && at.lastOfString().ordinal() == (number + 99) / 100 * 100L
              && at.isLastOfPrefix() == (number == 100_000)
              && at.compareTo(before) == (number == 1 ? 0 : 1)
              && at.withOrdinal(number).equals(at);
      if (!isRight) {
        fail("band " + at.text() + " is number " + number);
      }
      before = at;
      at = at.successor();
    }
    assertThat(at).isEqualTo(band("888-00001"));
  }

  /** The letters and lengths are invented but for X, a hummingbird band's; the rule is EURING's. */
  @ParameterizedTest
  @CsvSource({
    // text, prefix, suffix, next, first of its string
    "X12345, X, 12345, X12346, X12301",
    "x-12345, X, 12345, X12346, X12301",
    "T99999, T, 99999, T00000, T99901",
    "T00000, T, 00000, T00001, T99901",
    "AB1299, AB, 1299, AB1300, AB1201",
    "4H12399, 4H, 12399, 4H12400, 4H12301",
    "A9, A, 9, A0, A1",
    "K000000, K, 000000, K000001, K999901",
    "ABC1234567, ABC, 1234567, ABC1234568, ABC1234501"
  })
  void lettersStayAndTheDigitsBehindThemCount(
      String text, String prefix, String suffix, String next, String first) {
    assertThat(band(text)).isEqualTo(new BandNumber(prefix, suffix));
    assertThat(band(text).successor()).isEqualTo(band(next));
    assertThat(band(text).firstOfString()).isEqualTo(band(first));
    assertThat(band(text).text()).isEqualTo(prefix + suffix);
    assertThat(band(band(text).text())).isEqualTo(band(text));
  }

  @Test
  void digitsOfAnotherLengthAreOnlyTakenForAnotherScheme() {
    assertThat(BandNumber.parse("1234567")).isEmpty();
    BandNumber seven = BandNumber.ofOtherScheme("...1234567").orElseThrow();
    assertThat(seven).isEqualTo(new BandNumber("", "1234567"));
    assertThat(seven.text()).isEqualTo("1234567");
    assertThat(seven.successor().text()).isEqualTo("1234568");
    assertThat(BandNumber.ofOtherScheme("284155601")).contains(band("2841-55601"));
    assertThat(BandNumber.ofOtherScheme("1234567890").orElseThrow().text()).isEqualTo("1234567890");
    assertThat(BandNumber.ofOtherScheme("123")).isEmpty();
    assertThat(BandNumber.ofOtherScheme("12345678901")).isEmpty();
  }

  @Test
  void seriesDifferInPrefixOrLength() {
    assertThat(band("AB123").isOfSeriesOf(band("AB999"))).isTrue();
    assertThat(band("AB123").isOfSeriesOf(band("AB00123"))).isFalse();
    assertThat(band("AB123")).isLessThan(band("AB00001"));
    assertThat(band("2841-55601").isOfSeriesOf(band("284-55601"))).isFalse();
  }

  @Test
  void lastDigitsAreThreeAtMost() {
    assertThat(band("2841-55601").lastDigits()).isEqualTo("601");
    assertThat(band("AB12").lastDigits()).isEqualTo("12");
  }

  @Test
  void endingInReplacesTheLastDigits() {
    assertThat(band("2841-55602").endingIn("13")).isEqualTo(band("2841-55613"));
    assertThat(band("2841-55602").endingIn("613")).isEqualTo(band("2841-55613"));
    assertThat(band("2841-55602").endingIn("00001")).isEqualTo(band("2841-00001"));
  }
}
