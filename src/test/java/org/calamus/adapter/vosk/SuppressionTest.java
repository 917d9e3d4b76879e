package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SuppressionTest {

  private static final int SECOND = 16_000;

  @Test
  void cleanWeakensSteadyNoiseByAboutTwelveDecibels() {
    short[] noise = Sounds.noise(4_000, 800);
    short[] out = new Suppression().clean(noise);

    double change = level(out, 2 * SECOND, 4 * SECOND) - level(noise, 2 * SECOND, 4 * SECOND);
    assertThat(change).isBetween(-13.0, -10.0);
  }

  @Test
  void cleanLeavesAnEvenResidue() {
    short[] out = new Suppression().clean(Sounds.noise(6_000, 800));

    for (int at = 2 * SECOND; at < 6 * SECOND; at += SECOND / 4) {
      assertThat(level(out, at, at + SECOND / 4))
          .isCloseTo(level(out, 2 * SECOND, 6 * SECOND), within(2.0));
    }
  }

  @Test
  void cleanKeepsSpeechAsItIsWhenItIsQuiet() {
    short[] sound = Sounds.join(Sounds.room(2_000), Sounds.recording("rms-nine-two"));
    short[] out = new Suppression().clean(sound);

    int start = 2 * SECOND;
    int end = sound.length - Suppression.DELAY;
    double error = 0;
    double energy = 0;
    for (int i = start; i < end; i++) {
      energy += (double) sound[i] * sound[i];
      error += Math.pow(sound[i] - out[i + Suppression.DELAY], 2);
    }
    assertThat(error / energy).isLessThan(0.001);
  }

  @ParameterizedTest
  @CsvSource({"15", "10", "5"})
  void cleanRaisesTheSpeechToNoiseRatio(double ratio) {
    short[] speech =
        Sounds.join(Sounds.room(2_000), Sounds.recording("rms-seven-three-point-five"));
    double loudness = level(speech, 2 * SECOND, speech.length);
    double[] noise = noise(speech.length, 32_768 * Decibels.factor(loudness - ratio));
    short[] both = new short[speech.length];
    for (int i = 0; i < both.length; i++) {
      both[i] = (short) Math.round(speech[i] + noise[i]);
    }
    short[] out = new Suppression().clean(both);

    assertThat(ratioOf(speech, out)).isGreaterThan(ratio + 2.5);
  }

  @Test
  void cleanMakesSilenceOfSilence() {
    assertThat(new Suppression().clean(new short[2 * SECOND])).containsOnly(0);
  }

  @Test
  void cleanTakesAGeneratorForNoiseSoonAfterItWasSwitchedOn() {
    Suppression suppression = new Suppression();
    suppression.clean(Sounds.room(3_000));
    short[] generator = Sounds.noise(5_000, 600);
    short[] out = suppression.clean(generator);

    double change = level(out, 3 * SECOND, 5 * SECOND) - level(generator, 0, 5 * SECOND);
    assertThat(change).isLessThan(-9.0);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 37, 160, 512, 800})
  void cleanGivesTheSameWhateverTheBlocks(int length) {
    short[] sound = Sounds.noise(500, 800);
    Suppression suppression = new Suppression();
    short[] out = new short[sound.length];
    for (int at = 0; at < sound.length; at += length) {
      short[] block = Arrays.copyOfRange(sound, at, Math.min(sound.length, at + length));
      System.arraycopy(suppression.clean(block), 0, out, at, block.length);
    }

    assertThat(out).containsExactly(new Suppression().clean(sound));
  }

  @Test
  void restartForgetsTheSoundOnItsWay() {
    Suppression suppression = new Suppression();
    suppression.clean(Sounds.noise(1_000, 800));
    suppression.restart();

    assertThat(suppression.clean(new short[400])).containsOnly(0);
  }

  @ParameterizedTest
  @CsvSource({"0.01, 4.0379296", "0.5, 0.5597736", "1, 0.2193839", "2, 0.0489005", "5, 0.0011483"})
  void exponentialIntegralAgreesWithTheTables(double x, double tabled) {
    // Abramowitz and Stegun, table 5.1, from memory; the integral itself gives the same
    assertThat(Suppression.exponentialIntegral(x)).isCloseTo(tabled, within(1e-4 * tabled));
    assertThat(integral(x)).isCloseTo(tabled, within(1e-4 * tabled));
  }

  @Test
  void fourierThereAndBackChangesNothing() {
    double[] real = noise(512, 100);
    double[] kept = real.clone();
    double[] imaginary = new double[512];
    Fourier fourier = new Fourier(512);
    fourier.forward(real, imaginary);
    assertThat(real[0]).isCloseTo(Arrays.stream(kept).sum(), within(1e-6));
    fourier.inverse(real, imaginary);

    assertThat(real).containsExactly(kept, within(1e-9));
  }

  @Test
  void fourierFindsATone() {
    double[] real = new double[512];
    for (int i = 0; i < 512; i++) {
      real[i] = Math.cos(2 * Math.PI * 20 * i / 512);
    }
    double[] imaginary = new double[512];
    new Fourier(512).forward(real, imaginary);

    for (int i = 0; i < 512; i++) {
      double wanted = i == 20 || i == 492 ? 256 : 0;
      assertThat(Math.hypot(real[i], imaginary[i])).isCloseTo(wanted, within(1e-9));
    }
  }

  /** What of the output is the speech, against the rest of it, in decibels. */
  private static double ratioOf(short[] speech, short[] out) {
    double both = 0;
    double energy = 0;
    int start = 2 * SECOND;
    int end = speech.length - Suppression.DELAY;
    for (int i = start; i < end; i++) {
      both += (double) speech[i] * out[i + Suppression.DELAY];
      energy += (double) speech[i] * speech[i];
    }
    double factor = both / energy;
    double rest = 0;
    for (int i = start; i < end; i++) {
      rest += Math.pow(out[i + Suppression.DELAY] - factor * speech[i], 2);
    }
    return 10 * Math.log10(factor * factor * energy / rest);
  }

  private static double[] noise(int length, double rms) {
    Random random = new Random(3);
    return random.doubles(length).map(d -> rms * random.nextGaussian()).toArray();
  }

  private static double level(short[] sound, int from, int to) {
    double energy = 0;
    for (int i = from; i < to; i++) {
      energy += (double) sound[i] * sound[i];
    }
    return Decibels.ofAmplitude(Math.sqrt(energy / (to - from)));
  }

  /** exp(-t)/t from x to far away, by the trapezoid rule over equal ratios. */
  private static double integral(double x) {
    double sum = 0;
    double step = 1e-4;
    for (double t = x; t < x + 40; t *= 1 + step) {
      double next = t * (1 + step);
      sum += (Math.exp(-t) / t + Math.exp(-next) / next) / 2 * (next - t);
    }
    return sum;
  }
}
