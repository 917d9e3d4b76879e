package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Streams of noise. */
class NoiseTest {

  private static final int SAMPLES = 400_000;
  private static final int BAND_SAMPLES = 30_000;

  private static double[] track(Noise noise) {
    double[] track = new double[SAMPLES];
    for (int i = 0; i < SAMPLES; i++) {
      track[i] = noise.next();
    }
    return track;
  }

  /** The power that passes a band of one octave, by correlation with tones in it. */
  private static double octave(double[] track, double from) {
    double sum = 0;
    int tones = 40;
    for (int i = 0; i < tones; i++) {
      double hertz = from * (1 + (i + 0.5) / tones);
      double re = 0;
      double im = 0;
      for (int k = 0; k < BAND_SAMPLES; k++) {
        re += track[k] * Math.cos(2 * Math.PI * hertz * k / 16_000);
        im += track[k] * Math.sin(2 * Math.PI * hertz * k / 16_000);
      }
      sum += (re * re + im * im) * from / tones;
    }
    return sum;
  }

  @Test
  void everyNoiseHasAPowerOfOne() {
    double[] babble = {3, -1, 2, 0, 5};

    assertThat(SpeechLevel.meanPower(track(Noise.white(3)))).isCloseTo(1, within(0.02));
    assertThat(SpeechLevel.meanPower(track(Noise.pink(3)))).isCloseTo(1, within(0.15));
    assertThat(SpeechLevel.meanPower(track(Noise.loop(babble, 3)))).isCloseTo(1, within(0.001));
  }

  @Test
  void pinkNoiseIsEquallyStrongInEachOctaveAndWhiteIsNot() {
    double[] pink = track(Noise.pink(5));
    double[] white = track(Noise.white(5));

    double pinkRatio = octave(pink, 2_000) / octave(pink, 500);
    double whiteRatio = octave(white, 2_000) / octave(white, 500);

    assertThat(10 * Math.log10(pinkRatio)).isCloseTo(0, within(2.5));
    assertThat(10 * Math.log10(whiteRatio)).isCloseTo(6, within(2.5));
  }

  @Test
  void sameSeedGivesTheSameNoise() {
    assertThat(Noise.pink(9).next()).isEqualTo(Noise.pink(9).next());
    assertThat(Noise.pink(9).next()).isNotEqualTo(Noise.pink(10).next());
  }
}
