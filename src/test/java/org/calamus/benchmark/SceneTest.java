package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sound as it reaches the microphone. */
class SceneTest {

  @TempDir private Path folder;

  /** Two bursts of a tone with a pause of a second between them. */
  private Path bursts(String name, int amplitude) throws IOException {
    byte[] bytes = new byte[2 * 2 * AudioSource.RATE];
    for (int i = 0; i < 2 * AudioSource.RATE; i++) {
      boolean isOn = i < AudioSource.RATE / 2 || i >= 3 * AudioSource.RATE / 2;
      int step = isOn ? (int) (amplitude * Math.sin(0.3 * i)) : 0;
      bytes[2 * i] = (byte) step;
      bytes[2 * i + 1] = (byte) (step >> 8);
    }
    Path wav = folder.resolve(name);
    AudioFormat format = new AudioFormat(AudioSource.RATE, 16, 1, true, false);
    AudioInputStream stream =
        new AudioInputStream(new ByteArrayInputStream(bytes), format, bytes.length / 2);
    AudioSystem.write(stream, AudioFileFormat.Type.WAVE, wav.toFile());
    return wav;
  }

  private static double power(short[] sound, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += (double) sound[i] * sound[i];
    }
    return sum / (to - from);
  }

  private static double decibels(double ratio) {
    return 10 * Math.log10(ratio);
  }

  @Test
  void powerOfSpeechLeavesPausesOut() throws IOException {
    double[] sound = Recordings.read(bursts("a.wav", 8000));

    assertThat(SpeechLevel.power(sound)).isCloseTo(8000.0 * 8000 / 2, within(1e6));
    assertThat(SpeechLevel.meanPower(sound)).isCloseTo(8000.0 * 8000 / 4, within(1e6));
  }

  @Test
  void endIsWhereTheLastSpeechEnds() throws IOException {
    double[] sound = Recordings.read(bursts("a.wav", 8000));
    double[] longer = Arrays.copyOf(sound, sound.length + 5_000);

    assertThat(SpeechLevel.end(longer)).isCloseTo(2 * AudioSource.RATE, within(320));
  }

  @ParameterizedTest
  @CsvSource({"white20, 20", "white10, 10", "pink15, 15"})
  void noiseLiesAsFarBelowEachUtteranceAsAskedFor(String text, double expected) throws IOException {
    Condition condition = Condition.parse(text).orElseThrow();
    boolean isWhite = condition.noise().equals(Optional.of(Noise.Kind.WHITE));
    Noise noise = isWhite ? Noise.white(7) : Noise.pink(7);
    Scene scene =
        new Scene(
            List.of(bursts("soft.wav", 2000), bursts("loud.wav", 8000)),
            condition,
            Optional.of(noise));
    short[] alone = scene.next();
    double noisePower = power(alone, 0, alone.length);

    for (int i = 0; i < 2; i++) {
      short[] piece = scene.next();
      int from = Scene.BEFORE;
      double both = power(piece, from, from + AudioSource.RATE / 2);
      assertThat(decibels((both - noisePower) / noisePower)).isCloseTo(expected, within(0.6));
    }
  }

  @Test
  void noiseGoesOnBetweenUtterances() throws IOException {
    Scene scene =
        new Scene(
            List.of(bursts("a.wav", 8000)),
            Condition.parse("white20").orElseThrow(),
            Optional.of(Noise.white(1)));
    short[] alone = scene.next();
    short[] piece = scene.next();

    double before = power(piece, 0, Scene.BEFORE);
    double behind = power(piece, piece.length - Scene.BEHIND, piece.length);

    assertThat(decibels(before / power(alone, 0, alone.length))).isCloseTo(0, within(0.5));
    assertThat(decibels(behind / before)).isCloseTo(0, within(0.5));
  }

  @Test
  void loudSoundIsClippedAndSoftSoundIsSofter() throws IOException {
    List<Path> recording = List.of(bursts("a.wav", 20_000));

    short[] loud = piece(recording, "level3");
    short[] soft = piece(recording, "level0.1");

    assertThat(max(loud)).isEqualTo(Short.MAX_VALUE);
    assertThat(max(soft)).isCloseTo(2_000, within(5));
  }

  private static short[] piece(List<Path> recording, String condition) {
    Scene scene = new Scene(recording, Condition.parse(condition).orElseThrow(), Optional.empty());
    scene.next();
    return scene.next();
  }

  private static int max(short[] sound) {
    int most = 0;
    for (short sample : sound) {
      most = Math.max(most, sample);
    }
    return most;
  }
}
