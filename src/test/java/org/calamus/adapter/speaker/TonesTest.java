package org.calamus.adapter.speaker;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.calamus.core.dialogue.Tone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whether the tones can be told apart, by the pitch of their halves and the pause between them. */
class TonesTest {

  /** Our choice, no published source: an ear tells far less than one semitone apart. */
  private static final double LEAST_SEMITONES = 6;

  @Test
  void oneRisesOneFallsAndOneStaysLevel() {
    assertThat(semitones(halves(Tone.TAKEN))).isGreaterThan(5);
    assertThat(semitones(halves(Tone.NOT_UNDERSTOOD))).isLessThan(-5);
    assertThat(semitones(halves(Tone.LOOK_HERE))).isBetween(-0.2, 0.2);
  }

  @Test
  void everyTwoDifferByHalfAnOctaveOrMoreInTheirNotesTogether() {
    List<Tone> all = List.of(Tone.values());
    for (Tone one : all) {
      for (Tone other : all.subList(all.indexOf(one) + 1, all.size())) {
        double[] a = halves(one);
        double[] b = halves(other);
        double apart =
            Math.abs(semitones(new double[] {a[0], b[0]}))
                + Math.abs(semitones(new double[] {a[1], b[1]}));
        assertThat(apart).as(one + " and " + other).isGreaterThan(LEAST_SEMITONES);
      }
    }
  }

  @Test
  void onlyTheOneToLookHereHasAPause() {
    assertThat(pauseMillis(Tone.LOOK_HERE)).isBetween(25, 60);
    assertThat(pauseMillis(Tone.TAKEN)).isLessThan(20);
    assertThat(pauseMillis(Tone.NOT_UNDERSTOOD)).isLessThan(20);
  }

  @ParameterizedTest
  @EnumSource(Tone.class)
  void eachIsShortAndKeepsToTheRangeOfTheQuietLoudspeaker(Tone tone) {
    assertThat(Tones.samples(tone).length * 1000 / KevinSynthesizer.RATE).isBetween(100, 200);
    for (double hertz : halves(tone)) {
      assertThat(hertz).isBetween(250.0, 700.0);
    }
  }

  @ParameterizedTest
  @EnumSource(Tone.class)
  void theirLoudnessIsAPartOfTheFullOneAndNoneIsSilence(Tone tone) {
    int full = peak(Tones.samples(tone, 1));
    assertThat(full).isEqualTo(peak(Tones.samples(tone)));
    assertThat(peak(Tones.samples(tone, 0.5))).isBetween(full / 2 - 1, full / 2 + 1);
    assertThat(peak(Tones.samples(tone, 0))).isZero();
  }

  private static int peak(short[] samples) {
    return IntStream.range(0, samples.length).map(i -> Math.abs(samples[i])).max().orElseThrow();
  }

  /** The strongest pitch of the first and of the second half, in hertz. */
  private static double[] halves(Tone tone) {
    short[] all = Tones.samples(tone);
    int middle = all.length / 2;
    return new double[] {
      pitch(Arrays.copyOf(all, middle)), pitch(Arrays.copyOfRange(all, middle, all.length))
    };
  }

  private static double pitch(short[] samples) {
    return IntStream.rangeClosed(200, 1000)
        .boxed()
        .max((a, b) -> Double.compare(power(samples, a), power(samples, b)))
        .orElseThrow();
  }

  /** The power at one frequency: a discrete Fourier transform of one bin. */
  private static double power(short[] samples, double hertz) {
    double real = 0;
    double imaginary = 0;
    for (int i = 0; i < samples.length; i++) {
      double angle = 2 * Math.PI * hertz * i / KevinSynthesizer.RATE;
      real += samples[i] * Math.cos(angle);
      imaginary += samples[i] * Math.sin(angle);
    }
    return real * real + imaginary * imaginary;
  }

  private static double semitones(double[] hertz) {
    return 12 * Math.log(hertz[1] / hertz[0]) / Math.log(2);
  }

  /** The longest time within the tone at less than a tenth of its peak. */
  private static int pauseMillis(Tone tone) {
    short[] samples = Tones.samples(tone);
    int quiet = peak(samples) / 10;
    int longest = 0;
    int run = 0;
    for (short sample : samples) {
      run = Math.abs(sample) < quiet ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest * 1000 / KevinSynthesizer.RATE;
  }
}
