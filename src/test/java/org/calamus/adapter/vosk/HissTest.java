package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HissTest {

  private final Hiss hiss = new Hiss();

  @Test
  void silenceBecomesAHissOfAboutOneStep() {
    short[] out = hiss.over(new short[16000]);
    double energy = 0;
    for (short sample : out) {
      energy += (double) sample * sample;
    }
    assertThat(Math.sqrt(energy / out.length)).isBetween(0.9, 1.2);
  }

  @Test
  void hissIsTheSameForEveryUtterance() {
    short[] first = hiss.over(new short[1000]);
    assertThat(hiss.over(new short[1000])).isNotEqualTo(first);
    hiss.restart();
    assertThat(hiss.over(new short[1000])).isEqualTo(first);
  }

  @Test
  void loudestSamplesStayInRange() {
    short[] loud = new short[2000];
    java.util.Arrays.fill(loud, Short.MAX_VALUE);
    assertThat(hiss.over(loud)).doesNotContain(Short.MIN_VALUE);
    for (short sample : hiss.over(loud)) {
      assertThat((int) sample).isGreaterThan(32_000);
    }
  }
}
