package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Conditions as they are written. */
class ConditionTest {

  @Test
  void parseReadsNoiseAndLevelTogether() {
    Condition condition = Condition.parse("babble15,level0.1").orElseThrow();

    assertThat(condition.noise()).contains(Noise.Kind.BABBLE);
    assertThat(condition.decibels()).isEqualTo(15);
    assertThat(condition.gain()).isEqualTo(0.1);
    assertThat(Condition.parse("clean").orElseThrow()).isEqualTo(Condition.CLEAN);
  }

  @ParameterizedTest
  @ValueSource(strings = {"pink", "loud3", "level", "pink15,", "clean3"})
  void parseKnowsWhatIsNoCondition(String text) {
    assertThat(Condition.parse(text)).isEqualTo(Optional.empty());
  }
}
