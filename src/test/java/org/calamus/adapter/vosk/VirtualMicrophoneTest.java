package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.support.Lines;
import org.calamus.support.VirtualSound;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Sound through a real sound server and Java Sound into the ears. */
@Timeout(120)
class VirtualMicrophoneTest {

  @TempDir Path folder;

  @Test
  void wordsSpokenIntoTheMicrophoneAreHeardUntilItsServerDies() throws Exception {
    Path wav = padded("rms-seven-three-point-five");
    try (VirtualSound card = VirtualSound.start()) {
      Process program = card.java(EarsOnDefaultMicrophone.class, TestModel.folder().toString());
      Lines lines = heardBy(program);
      card.speak(wav);
      assertThat(lines.next("HEARD ")).startsWith("HEARD seven three point five AFTER ");

      card.kill();
      assertSaysThatItIsGone(lines);
      program.getOutputStream().close();
      long cpuMillis = Long.parseLong(lines.next("CPU ").substring(4));
      // a read that returns nothing at once, for ever, would burn many seconds
      assertThat(cpuMillis).isLessThan(8_000);
      assertThat(card.errors()).isEmpty();
    }
  }

  /** Java Sound was seen never to return from a line whose server was ended in this way. */
  @Test
  void earsSayThatTheMicrophoneStoppedWhenItsServerIsEndedInGoodOrder() throws Exception {
    try (VirtualSound card = VirtualSound.start()) {
      Process program = card.java(EarsOnDefaultMicrophone.class, TestModel.folder().toString());
      Lines lines = heardBy(program);

      card.end();
      assertSaysThatItIsGone(lines);
      program.getOutputStream().close();
      lines.next("CPU ");
      assertThat(program.waitFor(5, TimeUnit.SECONDS)).isTrue();
    }
  }

  private static Lines heardBy(Process program) throws Exception {
    Lines lines = new Lines(program);
    lines.next("UP ");
    lines.next("LEVEL");
    return lines;
  }

  private static void assertSaysThatItIsGone(Lines lines) throws Exception {
    assertThat(lines.next("DOWN The microphone"))
        .isEqualTo("DOWN The microphone stopped; plug it in again or check the sound settings.");
    assertThat(lines.next("DOWN No"))
        .isEqualTo(
            "DOWN No microphone can be opened; plug one in, or close the program that uses it.");
  }

  private Path padded(String name) throws Exception {
    short[] samples = Sounds.join(Sounds.room(300), Sounds.recording(name), Sounds.room(1_200));
    byte[] bytes = new byte[2 * samples.length];
    for (int i = 0; i < samples.length; i++) {
      bytes[2 * i] = (byte) samples[i];
      bytes[2 * i + 1] = (byte) (samples[i] >> 8);
    }
    Path wav = folder.resolve(name + ".wav");
    AudioSystem.write(
        new AudioInputStream(
            new ByteArrayInputStream(bytes),
            new AudioFormat(16_000, 16, 1, true, false),
            samples.length),
        AudioFileFormat.Type.WAVE,
        wav.toFile());
    return wav;
  }
}
