package org.calamus.adapter.speaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.calamus.support.Lines;
import org.calamus.support.VirtualSound;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The voice through Java Sound and a real sound server, recorded from its speaker. */
@Timeout(120)
class VirtualSpeakerTest {

  private static final String PHRASE = "wing nine two. mass";

  @TempDir Path folder;
  private VirtualSound card;
  private Process program;
  private Lines lines;
  private Writer input;

  @BeforeEach
  void startVoice() throws Exception {
    card = VirtualSound.start();
    program = card.java(VoiceOnDefaultSpeaker.class);
    lines = new Lines(program);
    input = program.outputWriter();
    lines.next("UP built-in voice");
    // the first phrase waits for the voice to load
    say(PHRASE);
    lines.next("ENDED");
    // its last sound may still be on its way through the server
    program.waitFor(1, TimeUnit.SECONDS);
  }

  @AfterEach
  void stopCard() {
    card.close();
  }

  @Test
  void phraseIsHeardInItsFullLength() throws Exception {
    short[] expected = new KevinSynthesizer(150).speak(PHRASE);
    Path raw = folder.resolve("heard.raw");
    Process recorder = card.recordSpeaker(raw);
    // a recorder begins with silence as soon as it is connected
    while (!Files.exists(raw) || Files.size(raw) == 0) {
      recorder.waitFor(20, TimeUnit.MILLISECONDS);
    }

    say(PHRASE);
    long began = millis(lines.next("BEGAN"));
    long ended = millis(lines.next("ENDED"));
    recorder.waitFor(700, TimeUnit.MILLISECONDS);
    recorder.destroy();
    recorder.waitFor(5, TimeUnit.SECONDS);

    int length = expected.length / 16;
    assertThat(began).isLessThan(100);
    assertThat(ended).isBetween(length - 150L, length + 500L);
    assertThat(loudMillis(samples(Files.readAllBytes(raw))))
        .isCloseTo(loudMillis(expected), within(120L));
  }

  @Test
  void hushCutsThePhraseOff() throws Exception {
    say("the quick brown fox jumps over the lazy dog and over the next one");
    lines.next("BEGAN");
    say("hush");

    assertThat(millis(lines.next("ENDED"))).isLessThan(100);
  }

  @Test
  void newPhraseCutsTheOneBeforeOff() throws Exception {
    say("the quick brown fox jumps over the lazy dog and over the next one");
    lines.next("BEGAN");
    say("nine");

    assertThat(millis(lines.next("ENDED"))).isLessThan(100);
    assertThat(millis(lines.next("BEGAN"))).isLessThan(150);
    lines.next("ENDED");
  }

  @Test
  void toneIsSoftAndShort() throws Exception {
    Path raw = folder.resolve("heard.raw");
    Process recorder = card.recordSpeaker(raw);
    while (!Files.exists(raw) || Files.size(raw) == 0) {
      recorder.waitFor(20, TimeUnit.MILLISECONDS);
    }
    say("TAKEN");
    recorder.waitFor(1_000, TimeUnit.MILLISECONDS);
    recorder.destroy();
    recorder.waitFor(5, TimeUnit.SECONDS);

    short[] heard = samples(Files.readAllBytes(raw));
    assertThat(loudMillis(heard)).isBetween(80L, 200L);
    for (short sample : heard) {
      assertThat(Math.abs((int) sample)).isLessThan(2_500);
    }
  }

  @Test
  void voiceIsDownAndPhrasesAreAnsweredAtOnceWhenTheServerDies() throws Exception {
    card.kill();
    say(PHRASE);

    assertThat(lines.next("DOWN"))
        .isEqualTo("DOWN No speaker can be opened; read on the screen, or plug in a headset.");
    lines.next("ENDED");
    say(PHRASE);
    assertThat(millis(lines.next("BEGAN"))).isLessThan(100);
    assertThat(millis(lines.next("ENDED"))).isLessThan(100);
    input.close();
    lines.next("BYE");
    assertThat(card.errors()).isEmpty();
  }

  private void say(String line) throws IOException {
    input.write(line + "\n");
    input.flush();
  }

  private static long millis(String line) {
    return Long.parseLong(line.substring(line.indexOf(' ') + 1));
  }

  /** From the first to the last sample that is clearly no silence. */
  private static long loudMillis(short[] samples) {
    int first = 0;
    int last = samples.length - 1;
    while (first < last && Math.abs((int) samples[first]) < 200) {
      first++;
    }
    while (last > first && Math.abs((int) samples[last]) < 200) {
      last--;
    }
    return (last - first) / 16;
  }

  private static short[] samples(byte[] raw) {
    short[] samples = new short[raw.length / 2];
    ByteBuffer.wrap(raw).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(samples);
    return samples;
  }
}
