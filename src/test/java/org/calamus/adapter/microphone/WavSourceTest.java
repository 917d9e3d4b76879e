package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavSourceTest {

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "PCM_SIGNED,   16000, 16, 1",
    "PCM_SIGNED,   16000, 16, 2",
    "PCM_SIGNED,   44100, 16, 2",
    "PCM_SIGNED,   48000, 24, 1",
    "PCM_SIGNED,   22050, 24, 6",
    "PCM_UNSIGNED,  8000,  8, 1",
    "ULAW,          8000,  8, 1",
    "ALAW,         11025,  8, 1"
  })
  void readGivesSameSoundWhateverTheFormat(String encoding, float rate, int bits, int channels)
      throws IOException {
    byte[] wav = wav(encoding, rate, bits, channels, 1.0, 0.5);

    short[] sound = all(new WavSource("tone.wav", wav, WavSource.Pace.FAST));

    // the filter lags by 32 samples of the lower rate
    assertThat(sound.length).isBetween(16_000, 16_070);
    short[] middle = Arrays.copyOfRange(sound, 4_000, 12_000);
    double power = 0;
    for (short sample : middle) {
      power += (double) sample * sample;
    }
    // the root mean square of a tone of half amplitude; 8 bit and its companding lose some of it
    assertThat(Math.sqrt(power / middle.length)).isCloseTo(11_585, within(250.0));
  }

  @Test
  void readGivesBlocksOfAgreedLengthWhenRateIsOdd() throws IOException {
    WavSource source =
        new WavSource("t.wav", wav("PCM_SIGNED", 44_100, 16, 2, 1.0, 0.5), WavSource.Pace.FAST);
    source.open();

    AudioSource.Read first = source.read();

    assertThat(((AudioSource.Block) first).samples().length).isBetween(320, 3_200);
    source.close();
  }

  @Test
  void readTakesAsLongAsTheSoundWhenLive() throws IOException {
    byte[] wav = wav("PCM_SIGNED", 16_000, 16, 1, 0.5, 0.5);
    long start = System.nanoTime();

    all(new WavSource("t.wav", wav, WavSource.Pace.LIVE));

    assertThat(Duration.ofNanos(System.nanoTime() - start))
        .isBetween(Duration.ofMillis(490), Duration.ofMillis(1_500));
  }

  @Test
  void readEndsWhenClosedByAnotherThread() throws Exception {
    // blocks of a live source come every 50 ms; ten seconds of them cannot have been read
    WavSource source =
        new WavSource("t.wav", wav("PCM_SIGNED", 16_000, 16, 1, 10, 0.5), WavSource.Pace.LIVE);
    source.open();
    CompletableFuture<AudioSource.Read> last =
        CompletableFuture.supplyAsync(
            () -> {
              AudioSource.Read read = source.read();
              while (read instanceof AudioSource.Block) {
                read = source.read();
              }
              return read;
            });

    source.close();

    assertThat(last.get(2, TimeUnit.SECONDS)).isEqualTo(new AudioSource.Ended());
  }

  @Test
  void openPlaysFromTheStartWhenOpenedAgain() throws IOException {
    WavSource source =
        new WavSource("t.wav", wav("PCM_SIGNED", 16_000, 16, 1, 0.3, 0.5), WavSource.Pace.FAST);

    short[] first = all(source);

    assertThat(all(source)).isEqualTo(first).hasSize(4_800);
  }

  @Test
  void readGivesWhatIsThereWhenDataIsCutShort() throws IOException {
    byte[] wav = wav("PCM_SIGNED", 16_000, 16, 1, 1.0, 0.5);

    short[] sound =
        all(new WavSource("cut.wav", Arrays.copyOf(wav, wav.length / 2), WavSource.Pace.FAST));

    assertThat(sound.length).isCloseTo(8_000, within(50));
  }

  @Test
  void openSaysWhatToDoWhenFileIsMissing() {
    WavSource source = new WavSource(folder.resolve("none.wav"), WavSource.Pace.FAST);

    assertThatThrownBy(source::open)
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessage("There is no recording none.wav; check its name and folder.");
  }

  @Test
  void openSaysWhatToDoWhenFileIsAFolder() throws IOException {
    Path inner = Files.createDirectory(folder.resolve("inner.wav"));

    assertThatThrownBy(new WavSource(inner, WavSource.Pace.FAST)::open)
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessage(
            "The recording inner.wav cannot be read; check that it is whole and may be read.");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 3, 11, 20, 30, 43})
  void openRefusesWhenHeaderIsCutShort(int length) throws IOException {
    byte[] wav = wav("PCM_SIGNED", 16_000, 16, 1, 1.0, 0.5);
    WavSource source = new WavSource("cut.wav", Arrays.copyOf(wav, length), WavSource.Pace.FAST);

    assertThatThrownBy(source::open)
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessageMatching("The (file|recording) cut\\.wav .*; .*\\.");
  }

  @Test
  void openRefusesWhenFileIsNoSound() {
    byte[] text = "band,species\n".repeat(40).getBytes(StandardCharsets.UTF_8);

    assertThatThrownBy(new WavSource("list.wav", text, WavSource.Pace.FAST)::open)
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessage(
            "The file list.wav is not a WAV recording that can be read; save it as 16 bit PCM WAV.");
  }

  @Test
  void openRefusesWhenRecordingHasNoFrames() throws IOException {
    byte[] wav = wav("PCM_SIGNED", 16_000, 16, 1, 0, 0.5);

    assertThatThrownBy(new WavSource("empty.wav", wav, WavSource.Pace.FAST)::open)
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessage("The recording empty.wav has no sound in it; record it again.");
  }

  @Test
  void openNeverFailsOtherwiseWhenHeaderIsDamaged() throws IOException {
    byte[] wav = wav("PCM_SIGNED", 16_000, 16, 1, 0.1, 0.5);
    Random random = new Random(7);
    int refused = 0;
    for (int i = 0; i < 500; i++) {
      byte[] damaged = wav.clone();
      for (int k = 0; k < 3; k++) {
        damaged[random.nextInt(44)] = (byte) random.nextInt(256);
      }
      try {
        all(new WavSource("damaged.wav", damaged, WavSource.Pace.FAST));
      } catch (AudioSource.AudioException e) {
        refused++;
      }
    }
    assertThat(refused).isBetween(1, 499);
  }

  @Test
  void warningNamesTheFileWhenItIsClipped() throws IOException {
    WavSource source =
        new WavSource("loud.wav", wav("PCM_SIGNED", 16_000, 16, 1, 1, 1.5), WavSource.Pace.FAST);
    source.open();

    assertThat(source.warning())
        .contains(
            "The recording loud.wav is clipped and may be misheard; record it at a lower level.");
    assertThat(source.read()).isInstanceOf(AudioSource.Block.class);
    source.close();
  }

  @Test
  void warningIsAbsentWhenOnlyPeaksTouchFullScale() throws IOException {
    WavSource source =
        new WavSource("good.wav", wav("PCM_SIGNED", 16_000, 16, 1, 1, 0.9), WavSource.Pace.FAST);
    source.open();

    assertThat(source.warning()).isEmpty();
    source.close();
  }

  private static short[] all(WavSource source) {
    source.open();
    short[] all = new short[0];
    AudioSource.Read read = source.read();
    while (read instanceof AudioSource.Block block) {
      int at = all.length;
      all = Arrays.copyOf(all, at + block.samples().length);
      System.arraycopy(block.samples(), 0, all, at, block.samples().length);
      read = source.read();
    }
    source.close();
    assertThat(read).isEqualTo(new AudioSource.Ended());
    return all;
  }

  /** A tone of 440 Hz; beyond an amplitude of 1 it is clipped. */
  private static byte[] wav(
      String encoding, float rate, int bits, int channels, double seconds, double amplitude)
      throws IOException {
    int frames = (int) Math.round(rate * seconds);
    byte[] pcm = new byte[frames * channels * 2];
    for (int i = 0; i < frames * channels; i++) {
      double value = amplitude * Math.sin(2 * Math.PI * 440 * (i / channels) / rate);
      int sample = (int) Math.max(-32_768, Math.min(32_767, Math.round(32_768 * value)));
      pcm[2 * i] = (byte) sample;
      pcm[2 * i + 1] = (byte) (sample >> 8);
    }
    AudioInputStream plain =
        new AudioInputStream(
            new ByteArrayInputStream(pcm),
            new AudioFormat(rate, 16, channels, true, false),
            frames);
    AudioFormat wanted =
        new AudioFormat(
            new AudioFormat.Encoding(encoding),
            rate,
            bits,
            channels,
            channels * bits / 8,
            rate,
            false);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    AudioSystem.write(
        AudioSystem.getAudioInputStream(wanted, plain), AudioFileFormat.Type.WAVE, out);
    return out.toByteArray();
  }
}
