package org.calamus.core.rule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Source of the means: AVONET, Tobias et al. 2022, Ecology Letters 25:581-597, CC BY 4.0. How far
 * birds depart from them is worked out from the limits' own derivation.
 */
class BodyProportionTest {

  @ParameterizedTest
  @CsvSource({
    "Archilochus colubris, 40.7, 24.3, 3.1",
    "Baeolophus bicolor, 77.9, 68.6, 21.6",
    "Cardinalis cardinalis, 93.5, 101.8, 42.6",
    "Catharus guttatus, 89.0, 67.7, 30.1",
    "Cyanocitta cristata, 130.0, 121.4, 88.0",
    "Dryobates pubescens, 91.3, 58.6, 25.6",
    "Geothlypis trichas, 54.7, 49.4, 9.5",
    "Melospiza melodia, 66.3, 67.2, 21.9",
    "Regulus satrapa, 57.2, 42.8, 6.2",
    "Setophaga petechia, 60.2, 43.3, 10.2",
    "Sitta carolinensis, 88.6, 48.8, 21.0",
    "Tachycineta bicolor, 115.9, 54.0, 21.2",
    "Thryothorus ludovicianus, 59.4, 50.7, 19.0",
    "Turdus migratorius, 127.0, 95.7, 78.5",
    "Zonotrichia albicollis, 72.8, 70.4, 24.4"
  })
  void holdsForEveryBuildAndFindsOneMeasureThatIsWrong(
      String name, BigDecimal wing, BigDecimal tail, BigDecimal mass) {
    BodyProportion species = new BodyProportion(wing, tail, mass);
    assertThat(species.massFactor(mass, wing)).isEqualByComparingTo("1");
    assertThat(species.tailFactor(tail, wing)).isEqualByComparingTo("1");
    assertThat(species.massFits(times(mass, "1.5"), times(wing, "0.95"))).as(name).isTrue();
    assertThat(species.massFits(times(mass, "0.75"), times(wing, "1.06"))).as(name).isTrue();
    assertThat(species.tailFits(times(tail, "1.15"), times(wing, "0.94"))).as(name).isTrue();
    assertThat(species.tailFits(times(tail, "0.85"), times(wing, "1.06"))).as(name).isTrue();
    // a fat bird's mass with a small wing, a lean one's with a large wing
    assertThat(species.massFits(times(mass, "1.5"), times(wing, "0.9"))).as(name).isFalse();
    assertThat(species.massFits(times(mass, "0.75"), times(wing, "1.1"))).as(name).isFalse();
    assertThat(species.massFits(times(mass, "10"), wing)).as(name).isFalse();
    assertThat(species.tailFits(times(tail, "1.3"), wing)).as(name).isFalse();
    assertThat(species.tailFits(times(tail, "0.75"), wing)).as(name).isFalse();
  }

  private static BigDecimal times(BigDecimal amount, String factor) {
    return amount.multiply(new BigDecimal(factor));
  }

  @Test
  void cannotBeMadeOfAnAmountOfZero() {
    assertThatThrownBy(() -> new BodyProportion(BigDecimal.ZERO, BigDecimal.ONE, BigDecimal.ONE))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
