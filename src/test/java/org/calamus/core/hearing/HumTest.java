package org.calamus.core.hearing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HumTest {

  private static final int RATE = 16_000;
  private static final int SECONDS = 3;

  private final double[] sound = new double[SECONDS * RATE];
  private final Random random = new Random(5);

  private HumTest noise(double rms) {
    for (int i = 0; i < sound.length; i++) {
      sound[i] += rms * random.nextGaussian();
    }
    return this;
  }

  /** Noise that falls with frequency, as that of wind does. */
  private HumTest rumble(double rms) {
    double[] brown = new double[sound.length];
    double last = 0;
    double squares = 0;
    for (int i = 0; i < brown.length; i++) {
      last = 0.995 * last + random.nextGaussian();
      brown[i] = last;
      squares += last * last;
    }
    double factor = rms / Math.sqrt(squares / brown.length);
    for (int i = 0; i < brown.length; i++) {
      sound[i] += factor * brown[i];
    }
    return this;
  }

  private HumTest tone(double hertz, double rms) {
    double phase = random.nextDouble();
    for (int i = 0; i < sound.length; i++) {
      sound[i] += Math.sqrt(2) * rms * Math.sin(2 * Math.PI * (hertz * i / RATE + phase));
    }
    return this;
  }

  private short[] samples() {
    short[] samples = new short[sound.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) Math.max(-32_768, Math.min(32_767, Math.round(sound[i])));
    }
    return samples;
  }

  private java.util.Optional<Hum> hum() {
    return Hum.in(samples(), RATE);
  }

  @ParameterizedTest
  @CsvSource({"50, 50", "60, 60", "49.9, 50", "60.1, 60", "49, 50", "61, 60"})
  void inFindsTheMainsAndItsMultiplesAboveTheNoise(double mains, int named) {
    noise(30).tone(mains, 100).tone(2 * mains, 60).tone(3 * mains, 80).tone(5 * mains, 40);
    assertThat(hum())
        .hasValueSatisfying(
            h -> {
              assertThat(h.hertz()).isEqualTo(named);
              // 10 log of 100, 60, 80 and 40 squared against 32768 squared, and against 30 squared
              assertThat(h.decibels()).isBetween(-48, -46);
              assertThat(h.aboveRest()).isBetween(11, 15);
            });
  }

  @Test
  void inFindsAHumThatHasNothingAtTheMainsItself() {
    assertThat(noise(30).tone(100, 90).tone(200, 40).hum())
        .hasValueSatisfying(h -> assertThat(h.hertz()).isEqualTo(50));
  }

  @Test
  void inTellsWhichMainsThoughBothShareAMultiple() {
    assertThat(noise(20).tone(60, 40).tone(180, 60).tone(300, 60).hum())
        .hasValueSatisfying(h -> assertThat(h.hertz()).isEqualTo(60));
  }

  @Test
  void inFindsNoneWhereTheRestIsLouder() {
    assertThat(noise(100).tone(50, 70).tone(150, 40).hum()).isEmpty();
    assertThat(tone(150, 120).hum()).as("the same, once the hum is louder").isPresent();
  }

  @Test
  void inFindsNoneInWhatIsSofterThanAQuietRoom() {
    assertThat(noise(3).tone(50, 14).hum()).isEmpty();
  }

  @Test
  void inFindsNoneInNoiseWindAndSilence() {
    assertThat(hum()).as("silence").isEmpty();
    assertThat(noise(200).hum()).as("noise").isEmpty();
    assertThat(new HumTest().rumble(1_000).hum()).as("wind").isEmpty();
  }

  @Test
  void inFindsNoneInAToneThatIsNoMultipleOrFarUp() {
    assertThat(noise(20).tone(440, 300).hum()).as("440 Hz").isEmpty();
    assertThat(new HumTest().noise(20).tone(300, 300).hum()).as("300 Hz alone").isEmpty();
  }

  @Test
  void inFindsNoneInToneThatMovesAsAVoiceDoes() {
    double phase = 0;
    for (int i = 0; i < sound.length; i++) {
      // between 100 and 140 Hz, once up and down in a second
      phase += (120 + 20 * Math.sin(2 * Math.PI * i / RATE)) / RATE;
      sound[i] = 500 * Math.sin(2 * Math.PI * phase) + 300 * Math.sin(4 * Math.PI * phase);
    }
    assertThat(noise(20).hum()).isEmpty();
  }

  @Test
  void inSaysNothingOfSoundThatIsTooShort() {
    assertThat(Hum.in(new short[RATE / 2 - 1], RATE)).isEmpty();
  }
}
