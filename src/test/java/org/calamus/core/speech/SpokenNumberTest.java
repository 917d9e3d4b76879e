package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Spoken;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SpokenNumberTest {

  private static final List<String> BELOW_TWENTY =
      List.of(
          "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen"
              .concat(" fifteen sixteen seventeen eighteen nineteen")
              .split(" "));
  private static final List<String> TENS =
      List.of("- - twenty thirty forty fifty sixty seventy eighty ninety".split(" "));

  static IntStream upTo400() {
    return IntStream.rangeClosed(0, 400);
  }

  @ParameterizedTest
  @MethodSource("upTo400")
  void readsEveryNumberInEveryWayItIsSaid(int number) {
    assertThat(ways(number))
        .allSatisfy(
            words ->
                assertThat(Listener.hear(FieldId.WING, words).replaceFirst("\\|.*", ""))
                    .as(words)
                    .isEqualTo(String.valueOf(number)));
  }

  @ParameterizedTest
  @MethodSource("upTo400")
  void readsADecimalBehindEveryWay(int number) {
    assertThat(ways(number))
        .allSatisfy(
            words ->
                assertThat(Listener.hear(FieldId.MASS, words + " point oh five"))
                    .as(words)
                    .startsWith(number + ".05"));
  }

  private static Set<String> ways(int number) {
    Set<String> ways = new LinkedHashSet<>();
    String digits = Spoken.digits(String.valueOf(number));
    ways.add(digits);
    // "oh" alone is an interjection
    ways.add(number == 0 ? digits : digits.replace("zero", "oh"));
    ways.add(digits.replace("nine", "niner"));
    if (number >= 10 && number < 100) {
      ways.add(belowHundred(number));
    }
    if (number >= 100) {
      String hundreds = BELOW_TWENTY.get(number / 100);
      int rest = number % 100;
      ways.add(hundreds + " hundred" + (rest == 0 ? "" : " " + belowHundred(rest)));
      if (rest >= 10) {
        ways.add(hundreds + " " + belowHundred(rest));
      }
    }
    return ways;
  }

  private static String belowHundred(int number) {
    if (number < 20) {
      return BELOW_TWENTY.get(number);
    }
    String tens = TENS.get(number / 10);
    return number % 10 == 0 ? tens : tens + " " + BELOW_TWENTY.get(number % 10);
  }

  /**
   * A teen and its ten are taken for each other (medication-safety bodies report 15 heard as 50);
   * ten to twelve and twenty sound like nothing else.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = ',',
      textBlock =
          """
          thirteen, 13|30
          fourteen, 14|40
          fifteen, 15|50
          sixteen, 16|60
          sixty point seven, 60.7|16.7|62.7
          fifty point seven, 50.7|15.7
          seventeen, 17|70
          eighteen, 18|80
          nineteen, 19|90
          thirty, 30|13
          fifty, 50|15
          ninety, 90|19
          one fifteen, 115|150
          one hundred fifty, 150|115
          fifteen point three, 15.3|50.3
          ten, 10
          eleven, 11
          twelve, 12
          twenty, 20
          fifty one, 51
          one five, 15
          five zero, 50
          one twenty, 120
          """)
  void saysWhichNumbersSoundLikeAnother(String words, String heard) {
    assertThat(Listener.hear(FieldId.MASS, words)).isEqualTo(heard);
  }
}
