package org.calamus.core.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SentUnitTest {

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          GRAM,       22.30,  22.30
          GRAM,       0,      0
          KILOGRAM,   0.0223, 22.3
          KILOGRAM,   0.02,   20
          MILLIGRAM,  22300,  22.300
          MILLIMETRE, 92.50,  92.50
          CENTIMETRE, 9.25,   92.5
          CENTIMETRE, 9,      90
          INCH,       1,      25.4
          INCH,       3.4665, 88.04910
          """)
  void toOursConvertsExactlyAndKeepsTheDigits(SentUnit unit, BigDecimal sent, String ours) {
    assertThat(unit.toOurs(sent).toString()).isEqualTo(ours);
  }
}
