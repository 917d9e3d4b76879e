package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Compared with an independent measure: the discrete Fourier transform at single frequencies. */
class ResamplerTest {

  private static final int SECOND = 16_000;

  @ParameterizedTest
  @CsvSource({
    "48000, 100",
    "48000, 1000",
    "48000, 3400",
    "48000, 6700",
    "44100, 1000",
    "44100, 6700",
    "22050, 4000",
    "8000, 1000",
    "8000, 3300",
    "11025, 2500",
    "16000, 5000"
  })
  void takeKeepsToneOfBandWhenRatesDiffer(int rate, int hertz) {
    short[] out = resampled(rate, hertz, 10_000);

    assertThat(amplitudeAt(out, hertz)).isCloseTo(10_000, within(120.0));
  }

  @ParameterizedTest
  @CsvSource({
    "48000, 8100, 7900",
    "48000, 10000, 6000",
    "48000, 15000, 1000",
    "48000, 17000, 1000",
    "44100, 9000, 7000",
    "44100, 15000, 1000",
    "22050, 8500, 7500"
  })
  void takeRejectsToneAboveBandWhenItWouldFoldBack(int rate, int hertz, int folded) {
    short[] out = resampled(rate, hertz, 10_000);

    // 70 dB below; rounding to 16 bit alone makes less than 1
    assertThat(amplitudeAt(out, folded)).isLessThan(3.2);
    assertThat(amplitudeAt(out, hertz)).isLessThan(3.2);
  }

  @ParameterizedTest
  @CsvSource({"8000, 1000, 7000", "11025, 2000, 9025"})
  void takeMakesNoImageWhenRateRises(int rate, int hertz, int image) {
    short[] out = resampled(rate, hertz, 10_000);

    assertThat(amplitudeAt(out, image)).isLessThan(3.2);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 7, 441, 2205, 44_100})
  void takeGivesSameSoundWhateverTheBlocks(int blockLength) {
    short[] in = tone(44_100, 1_000, 10_000);
    Resampler whole = new Resampler(44_100, SECOND);
    short[] expected = join(whole.take(in), whole.rest());

    Resampler parted = new Resampler(44_100, SECOND);
    short[] out = new short[0];
    for (int at = 0; at < in.length; at += blockLength) {
      out =
          join(out, parted.take(Arrays.copyOfRange(in, at, Math.min(in.length, at + blockLength))));
    }

    assertThat(join(out, parted.rest())).isEqualTo(expected);
  }

  @Test
  void takeKeepsLengthWhenItRunsLong() {
    Resampler resampler = new Resampler(44_100, SECOND);
    long count = 0;
    for (int i = 0; i < 600; i++) {
      count += resampler.take(new short[4_410]).length;
    }

    assertThat(count).isBetween(60L * SECOND - 2, 60L * SECOND + 2);
  }

  @Test
  void takeDoesNotOverflowWhenSoundIsAtFullScale() {
    short[] square = new short[48_000];
    for (int i = 0; i < square.length; i++) {
      square[i] = i / 48 % 2 == 0 ? Short.MAX_VALUE : Short.MIN_VALUE;
    }

    short[] out = new Resampler(48_000, SECOND).take(square);

    // 2 ms into each half wave the sign must be that of the square, not wrapped round
    assertThat(out[32 * 100 + 36]).isNotEqualTo(out[32 * 100 + 36 + 16]);
    assertThat(amplitudeAt(Arrays.copyOf(out, SECOND), 500)).isGreaterThan(32_767.0);
  }

  private static short[] resampled(int rate, int hertz, int amplitude) {
    short[] out = new Resampler(rate, SECOND).take(tone(rate, hertz, amplitude));
    // from the middle, one second of whole waves, past the onset of the filter
    return Arrays.copyOfRange(out, SECOND / 4, SECOND / 4 + SECOND);
  }

  private static short[] tone(int rate, int hertz, int amplitude) {
    short[] samples = new short[2 * rate];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) Math.round(amplitude * Math.sin(2 * Math.PI * hertz * i / rate));
    }
    return samples;
  }

  /** The amplitude of one frequency in a second of sound. */
  private static double amplitudeAt(short[] second, int hertz) {
    double re = 0;
    double im = 0;
    for (int i = 0; i < second.length; i++) {
      re += second[i] * Math.cos(2 * Math.PI * hertz * i / SECOND);
      im += second[i] * Math.sin(2 * Math.PI * hertz * i / SECOND);
    }
    return 2 * Math.hypot(re, im) / second.length;
  }

  private static short[] join(short[] a, short[] b) {
    short[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }
}
