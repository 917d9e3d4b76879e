package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Map;
import org.calamus.core.form.Range;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Common practice, no published source; an inch is 25.4 mm by definition. */
class SlipsTest {

  private static Range range(String least, String most) {
    return new Range(new BigDecimal(least), new BigDecimal(most));
  }

  @ParameterizedTest
  @CsvSource({
    // given, unit, least and most that fit, kind, meant
    "29, MILLIMETRE, 77, 100, DIGITS_SWAPPED, 92",
    "223, GRAM, 15.8, 31.5, DECIMAL_POINT, 22.3",
    "2.23, GRAM, 15.8, 31.5, DECIMAL_POINT, 22.3",
    "05, MILLIMETRE, 101, 130, HUNDRED_MISSING, 105",
    "9.2, MILLIMETRE, 77, 100, CENTIMETRES, 92",
    "3.62, MILLIMETRE, 77, 100, INCHES, 91.9",
    "3.05, MILLIMETRE, 77.5, 100, INCHES, 77.5",
    "922, MILLIMETRE, 77, 93, DECIMAL_POINT, 92.2",
    "9925, MILLIMETRE, 920, 930, DIGIT_TOO_MANY, 925"
  })
  void namedTellsWhatWentWrongAndWhatWasMeant(
      BigDecimal given, Unit unit, String least, String most, Slip.Kind kind, BigDecimal meant) {
    Slip slip = Slips.named(given, unit, range(least, most)).orElseThrow();
    assertThat(slip.kind()).isEqualTo(kind);
    assertThat(slip.amount()).isEqualByComparingTo(meant);
    assertThat(kind.words()).isNotBlank().doesNotContainPattern("[0-9]");
  }

  @Test
  void namedFindsNothingWhereNoSlipExplainsTheAmount() {
    assertThat(Slips.named(new BigDecimal("55"), Unit.MILLIMETRE, range("77", "100"))).isEmpty();
    assertThat(Slips.named(new BigDecimal("3.02"), Unit.MILLIMETRE, range("77.5", "100")))
        .isEmpty();
    assertThat(Slips.named(new BigDecimal("3.62"), Unit.GRAM, range("77", "100"))).isEmpty();
  }

  @Test
  void fieldsThatFitAreTheOthersWhoseRangeHoldsTheAmount() {
    Map<FieldId, Range> ranges =
        Map.of(FieldId.WING, range("77", "100"), FieldId.MASS, range("15.8", "31.5"));
    assertThat(Slips.fieldsThatFit(new BigDecimal("22.3"), FieldId.WING, ranges))
        .containsExactly(FieldId.MASS);
    assertThat(Slips.fieldsThatFit(new BigDecimal("92"), FieldId.WING, ranges)).isEmpty();
  }

  @Test
  void isTransposedKnowsOneSwapOnly() {
    assertThat(Slips.isTransposed("425", "452")).isTrue();
    assertThat(Slips.isTransposed("425", "425")).isFalse();
    assertThat(Slips.isTransposed("425", "254")).isFalse();
  }
}
