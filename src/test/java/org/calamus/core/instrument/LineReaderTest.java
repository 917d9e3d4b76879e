package org.calamus.core.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.calamus.core.instrument.LineFormat.DecimalMark;
import org.calamus.core.record.Reading.Stability;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineReaderTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # line          | amount
          '1 S+  22.30 g' | 22.30
          '1 S   22.30 g' | 22.30
          '1 S-  14.8 g'  | -14.8
          '1 S- 00.0 g'   | 0.0
          '1 M+ 00022.3 g'| 22.3
          '1 S+ .5 g'     | 0.5
          '1 S+ 5. g'     | 5
          """)
  void readGivesTheDigitsAsReceived(String line, String amount) {
    Decoded decoded = reader(DecimalMark.POINT).read(line);

    assertThat(decoded).isInstanceOf(Decoded.Measured.class);
    assertThat(((Decoded.Measured) decoded).reading().amount().toPlainString()).isEqualTo(amount);
    assertThat(((Decoded.Measured) decoded).reading().raw()).isEqualTo(line);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # line            | why
          '2 S+ 22.30 g'    | the device file listens to another channel
          '1 S+ 22.30 oz'   | the unit "oz" is not in the device file
          '1 X+ 22.30 g'    | the stability mark "X" is not in the device file
          '1 S+ 22.3.0 g'   | the value is no number
          '1 S+ . g'        | the value is no number
          '1 S+ 22,30 g'    | the value is no number
          'hello'           | no pattern of the device file fits the line
          'TARE'            | a tare
          """)
  void readPassesOverWhatItDoesNotUnderstand(String line, String why) {
    assertThat(reader(DecimalMark.POINT).read(line)).isEqualTo(new Decoded.Noise(line, why));
  }

  @Test
  void readTakesADecimalCommaOnlyWhereTheDescriptionSaysSo() {
    assertThat(reader(DecimalMark.COMMA).read("1 S+ 22,30 g"))
        .isInstanceOfSatisfying(
            Decoded.Measured.class,
            measured -> assertThat(measured.reading().amount()).isEqualTo("22.30"));
    assertThat(reader(DecimalMark.COMMA).read("1 S+ 22.30 g")).isInstanceOf(Decoded.Noise.class);
  }

  @Test
  void readReportsFaultsOfLinesAndOfStatus() {
    assertThat(reader(DecimalMark.POINT).read("OVER")).isEqualTo(new Decoded.Fault("Too heavy."));
    assertThat(reader(DecimalMark.POINT).read("1 S+ 22.3 g BAD"))
        .isEqualTo(new Decoded.Fault("The balance is ill."));
  }

  private static LineReader reader(DecimalMark mark) {
    return new LineReader(
        new LineFormat(
            List.of(
                new LinePattern.Value(
                    Pattern.compile(
                        "(?<channel>\\d) (?<stable>[A-Z])(?<sign>.) *(?<value>[\\d.,]+)"
                            + " (?<unit>[a-z]+)( (?<status>[A-Z]+))?")),
                new LinePattern.Ignored(Pattern.compile("TARE"), "a tare"),
                new LinePattern.Reported(Pattern.compile("OVER"), "Too heavy.")),
            Map.of("S", Stability.STABLE, "M", Stability.MOVING),
            Map.of("g", SentUnit.GRAM),
            Map.of("BAD", "The balance is ill."),
            Optional.of("1"),
            mark));
  }
}
