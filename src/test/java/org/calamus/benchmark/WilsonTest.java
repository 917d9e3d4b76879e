package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The ranges of shares. */
class WilsonTest {

  /** Worked by hand from the formula with z = 1.96. */
  @Test
  void ofGivesTheKnownRangeOfEightyOneOfTwoHundredSixtyThree() {
    Wilson range = Wilson.of(81, 263);

    assertThat(range.least()).isCloseTo(0.2553, within(0.0005));
    assertThat(range.most()).isCloseTo(0.3662, within(0.0005));
  }

  /** For none of n the upper end is z² / (n + z²). */
  @Test
  void ofStaysAboveZeroWhereNothingWasSeen() {
    Wilson range = Wilson.of(0, 10);

    assertThat(range.least()).isZero();
    assertThat(range.most()).isCloseTo(3.8415 / 13.8415, within(0.0005));
  }

  @Test
  void ofMirrorsWhereSharesMirror() {
    Wilson range = Wilson.of(3, 20);
    Wilson mirrored = Wilson.of(17, 20);

    assertThat(range.least()).isCloseTo(1 - mirrored.most(), within(1e-9));
    assertThat(range.most()).isCloseTo(1 - mirrored.least(), within(1e-9));
  }

  @Test
  void isApartFromTellsWhetherRangesMeet() {
    assertThat(Wilson.of(10, 100).isApartFrom(Wilson.of(60, 100))).isTrue();
    assertThat(Wilson.of(60, 100).isApartFrom(Wilson.of(10, 100))).isTrue();
    assertThat(Wilson.of(50, 100).isApartFrom(Wilson.of(55, 100))).isFalse();
  }
}
