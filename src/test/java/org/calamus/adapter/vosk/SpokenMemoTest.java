package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.adapter.files.MemoFiles;
import org.calamus.core.dialogue.Event;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Real ears take a spoken note down, and go on recognising behind it. */
@Timeout(60)
class SpokenMemoTest {

  private static final Duration HALF_A_MINUTE = Duration.ofSeconds(30);
  private static final int PLENTY = 30 * AudioSource.RATE;
  private static final AudioSource.Read ENDED = new AudioSource.Ended();

  private final ScriptedSource source = new ScriptedSource();
  private EarsRig rig;

  @BeforeEach
  void listen() throws InterruptedException {
    rig = new EarsRig(source).start(EarsRig.NUMBERS);
    source.give(Sounds.room(700));
    source.awaitHeard();
  }

  @AfterEach
  void close() {
    rig.close();
  }

  private static short[] speech() {
    return Sounds.trimmed("rms-seven-three-point-five");
  }

  /** Digits behind the memo are the first that are recognised, and the only ones. */
  private void assertOnlyWhatFollowsIsHeard() throws InterruptedException {
    source.give(Sounds.room(700), Sounds.trimmed("rms-one"), Sounds.room(700)).give(ENDED);
    assertThat(rig.textsUntilTheEnd()).containsExactly("one");
  }

  @Test
  void memoHoldsTheSoundUntilTheSilenceBehindTheSpeech(@TempDir Path data) throws Exception {
    short[] given = Sounds.join(Sounds.room(400), speech(), Sounds.room(2500));
    rig.ears.recordMemo(new MemoFiles(data).named("12-1.wav"), HALF_A_MINUTE);
    source.give(given);
    Event.MemoRecorded recorded = rig.next(Event.MemoRecorded.class);
    assertThat(recorded.name()).isEqualTo("12-1.wav");
    short[] written = samples(data.resolve("memos").resolve("12-1.wav"));
    assertThat(written).isEqualTo(Arrays.copyOf(given, written.length));
    assertThat(recorded.length()).isEqualTo(Duration.ofMillis(written.length / 16));
    long behindSpeech = recorded.length().toMillis() - 400 - speech().length / 16;
    // the end of a word fades below what counts as speech
    assertThat(behindSpeech).isBetween(1300L, 1600L);
    assertOnlyWhatFollowsIsHeard();
  }

  private static short[] samples(Path wav) throws Exception {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
      assertThat(in.getFormat().matches(new AudioFormat(16_000, 16, 1, true, false))).isTrue();
      byte[] bytes = in.readAllBytes();
      short[] samples = new short[bytes.length / 2];
      java.nio.ByteBuffer.wrap(bytes)
          .order(java.nio.ByteOrder.LITTLE_ENDIAN)
          .asShortBuffer()
          .get(samples);
      return samples;
    } catch (IOException e) {
      throw new AssertionError(wav.toString(), e);
    }
  }

  @Test
  void memoEndsAtItsLongestInMidBlock() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.recordMemo(tape, Duration.ofMillis(480));
    short[] given = Arrays.copyOf(speech(), 8000);
    source.give(given);
    assertThat(rig.next(Event.MemoRecorded.class).length()).isEqualTo(Duration.ofMillis(480));
    assertThat(tape.sound()).isEqualTo(Arrays.copyOf(given, 7680));
    assertThat(tape.isKept()).isTrue();
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void memoEndsSoonAfterItIsStopped() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.recordMemo(tape, HALF_A_MINUTE);
    source.give(speech());
    source.awaitHeard();
    rig.ears.stopMemo();
    source.give(Sounds.room(300));
    rig.next(Event.MemoRecorded.class);
    // what was said just before the key is on its way for 0.15 s
    assertThat(tape.sound()).hasSize(speech().length + 2400).startsWith(speech());
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void stopOfNoMemoDoesNotEndTheNext() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.stopMemo();
    rig.ears.recordMemo(tape, HALF_A_MINUTE);
    source.give(speech(), Sounds.room(1700));
    rig.next(Event.MemoRecorded.class);
    assertThat(tape.sound()).hasSizeGreaterThan(speech().length + 1300 * 16);
  }

  @Test
  void silenceAloneIsNoMemo() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.recordMemo(tape, Duration.ofSeconds(2));
    source.give(Sounds.room(2100));
    assertThat(rig.next(Event.MemoFailed.class).sentence())
        .isEqualTo("Nothing was heard: say the note again, or type it.");
    assertThat(tape.isThrownAway()).isTrue();
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void memoStoppedBeforeAnySoundIsNone() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.recordMemo(tape, HALF_A_MINUTE);
    rig.ears.stopMemo();
    source.give(Sounds.room(300));
    rig.next(Event.MemoFailed.class);
    assertThat(tape.isThrownAway()).isTrue();
  }

  @Test
  void memoLeavesOutWhatIsHeardWhileTheEarsAreShut() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.shut();
    rig.ears.recordMemo(tape, HALF_A_MINUTE);
    source.give(Sounds.trimmed("rms-nine-two"));
    source.awaitHeard();
    rig.ears.openAtOnce();
    short[] given = Sounds.join(speech(), Sounds.room(1700));
    source.give(given);
    rig.next(Event.MemoRecorded.class);
    assertThat(tape.sound()).isEqualTo(Arrays.copyOf(given, tape.sound().length));
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void memoForgetsTheUtteranceInWhichItBegins() throws Exception {
    source.give(Sounds.trimmed("rms-nine-two"));
    source.awaitHeard();
    rig.ears.recordMemo(new Tape(PLENTY), HALF_A_MINUTE);
    source.give(speech(), Sounds.room(1700));
    rig.next(Event.MemoRecorded.class);
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void secondMemoIsRefusedWhileOneIsTaken() throws Exception {
    Tape first = new Tape(PLENTY);
    rig.ears.recordMemo(first, HALF_A_MINUTE);
    rig.ears.recordMemo(new Tape(PLENTY), HALF_A_MINUTE);
    assertThat(rig.next(Event.MemoFailed.class).sentence())
        .isEqualTo("A note is being recorded: end that one first.");
    source.give(speech(), Sounds.room(1700));
    rig.next(Event.MemoRecorded.class);
    assertThat(first.isKept()).isTrue();
  }

  @Test
  void diskThatFillsUpIsToldAndTheEarsGoOn() throws Exception {
    Tape tape = new Tape(4000);
    rig.ears.recordMemo(tape, HALF_A_MINUTE);
    source.give(Arrays.copyOf(speech(), 4800));
    assertThat(rig.next(Event.MemoFailed.class).sentence()).isEqualTo(Tape.FULL);
    assertThat(tape.isThrownAway()).isTrue();
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void diskThatIsFullAtTheBeginningIsToldAndTheEarsGoOn() throws Exception {
    rig.ears.recordMemo(new Tape(0), HALF_A_MINUTE);
    source.give(Sounds.room(100));
    assertThat(rig.next(Event.MemoFailed.class).sentence()).isEqualTo(Tape.FULL);
    assertOnlyWhatFollowsIsHeard();
  }

  @Test
  void memoIsKeptAsFarAsItCameWhenTheMicrophoneIsLost() throws Exception {
    Tape tape = new Tape(PLENTY);
    rig.ears.recordMemo(tape, HALF_A_MINUTE);
    source.give(speech()).give(new AudioSource.Lost("The microphone is gone; plug it in."));
    rig.next(Event.MemoRecorded.class);
    assertThat(tape.sound()).isEqualTo(speech());
  }

  @Test
  void memoWithoutAMicrophoneFailsAtOnce() throws Exception {
    source.give(ENDED);
    rig.next(Event.PartDown.class);
    rig.ears.recordMemo(new Tape(PLENTY), HALF_A_MINUTE);
    assertThat(rig.next(Event.MemoFailed.class).sentence())
        .isEqualTo("The microphone gives no sound: type the note, or say it when it is back.");
  }

  @Test
  void memoAskedForJustBeforeTheMicrophoneIsLostIsAnswered() throws Exception {
    rig.ears.recordMemo(new Tape(PLENTY), HALF_A_MINUTE);
    source.give(new AudioSource.Lost("The microphone is gone; plug it in."));
    rig.next(Event.MemoFailed.class);
    assertOnlyWhatFollowsIsHeard();
  }
}
