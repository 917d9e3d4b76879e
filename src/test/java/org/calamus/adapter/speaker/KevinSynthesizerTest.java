package org.calamus.adapter.speaker;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.calamus.core.dialogue.Tone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class KevinSynthesizerTest {

  private static final KevinSynthesizer SYNTHESIZER = new KevinSynthesizer(150);

  @Test
  void speakGivesTheSameSoundEachTime() {
    short[] first = SYNTHESIZER.speak("wing nine two");

    assertThat(SYNTHESIZER.speak("wing nine two")).isEqualTo(first);
    // three words at 150 a minute take about 1.2 s
    assertThat(first.length / 16).isBetween(700, 1_800);
  }

  @Test
  void speakGivesNothingWhenThereIsNothingToSay() {
    assertThat(SYNTHESIZER.speak(" ").length).isLessThan(KevinSynthesizer.RATE / 2);
  }

  @Test
  void speakPrintsNothing() {
    PrintStream before = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      SYNTHESIZER.speak("chickadee. one five point five; 92% (molt) é ♀ 7/8");
    } finally {
      System.setOut(before);
    }
    assertThat(printed.size()).isZero();
  }

  @ParameterizedTest
  @CsvSource({
    "nuthatch, n ah1 t hh ae ch",
    "vireo, v ih1 r iy ow",
    "chickadee, ch ih1 k ax d iy",
    "tarsus, t aa1 r s ax s",
    "millimetres, m ih1 l ax m iy t er z"
  })
  void phonesOfAreThoseOfTheTrade(String word, String phones) {
    assertThat(SYNTHESIZER.phonesOf(word)).isEqualTo(phones);
  }

  @ParameterizedTest
  @EnumSource(Tone.class)
  void toneIsShortSoftAndWithoutAnEdge(Tone tone) {
    short[] samples = Tones.samples(tone);

    assertThat(samples.length / 16).isBetween(100, 200);
    assertThat(Math.abs((int) samples[0])).isLessThan(10);
    assertThat(Math.abs((int) samples[samples.length - 1])).isLessThan(10);
    for (int i = 1; i < samples.length; i++) {
      assertThat(Math.abs((int) samples[i])).isLessThanOrEqualTo(1_600);
      assertThat(Math.abs(samples[i] - samples[i - 1])).isLessThan(500);
    }
  }

  @Test
  void mixAddsAToneToAPhraseAndClips() {
    Mix mix = new Mix(new short[] {1_000, 30_000, 30_000});
    assertThat(mix.next(1, 0.5)).containsExactly(500);
    mix.add(new short[] {10_000, -10_000, 5});

    assertThat(mix.next(2, 1)).containsExactly(32_767, 20_000);
    assertThat(mix.isOver()).isFalse();
    assertThat(mix.next(3, 1)).containsExactly(5, 0, 0);
    assertThat(mix.isOver()).isTrue();
  }
}
