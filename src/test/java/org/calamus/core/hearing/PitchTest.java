package org.calamus.core.hearing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.calamus.support.Wind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What has the pitch of a voice. */
class PitchTest {

  private static final int RATE = 16_000;

  private final double[] sound = new double[RATE];
  private final Random random = new Random(3);

  /** What a throat makes: a pulse each period, in other words all multiples, softer each. */
  private PitchTest voice(double hertz, double loud) {
    for (int multiple = 1; multiple * hertz < RATE / 2.0; multiple++) {
      for (int i = 0; i < sound.length; i++) {
        sound[i] += loud / multiple * Math.sin(2 * Math.PI * multiple * hertz * i / RATE);
      }
    }
    return this;
  }

  private PitchTest noise(double rms) {
    for (int i = 0; i < sound.length; i++) {
      sound[i] += rms * random.nextGaussian();
    }
    return this;
  }

  /** Noise below some 200 Hz, as wind in a microphone makes it. */
  private PitchTest wind(int seed) {
    Wind wind = new Wind(new Random(seed));
    for (int i = 0; i < sound.length; i++) {
      sound[i] += 70_000 * wind.next();
    }
    return this;
  }

  /** Notes that fall from 5 to 3 kHz, each a tenth of a second. */
  private PitchTest bird() {
    double phase = 0;
    for (int i = 0; i < sound.length; i++) {
      double part = i % 1_600 / 1_600.0;
      phase += 2 * Math.PI * (5_000 - 2_000 * part) / RATE;
      sound[i] += 9_000 * Math.sin(Math.PI * part) * Math.sin(phase);
    }
    return this;
  }

  private long millis() {
    short[] samples = new short[sound.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) Math.max(-32_768, Math.min(32_767, Math.round(sound[i])));
    }
    return Pitch.in(samples, RATE).toMillis();
  }

  @ParameterizedTest
  @ValueSource(ints = {80, 120, 210, 380})
  void aVoiceHasAPitchThroughout(int hertz) {
    assertThat(voice(hertz, 3_000).millis()).isBetween(930L, 1_000L);
  }

  @Test
  void aVoiceHasItInNoiseAsWell() {
    // 3,000 and its multiples are 2,700 in the mean; 10 dB below that
    assertThat(voice(120, 3_000).noise(850).millis()).isGreaterThan(800);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void windHasNone(int seed) {
    assertThat(wind(seed).noise(30).millis()).isLessThanOrEqualTo(30);
  }

  @Test
  void noiseHasNone() {
    assertThat(noise(3_000).millis()).isLessThanOrEqualTo(10);
  }

  @Test
  void aBirdHasNoneOfAVoice() {
    assertThat(bird().noise(10).millis()).isZero();
  }

  @Test
  void silenceHasNone() {
    assertThat(millis()).isZero();
  }

  @Test
  void aSoundThatIsTooShortHasNone() {
    assertThat(Pitch.in(new short[300], RATE)).isZero();
    assertThat(Pitch.in(new short[0], RATE)).isZero();
  }
}
