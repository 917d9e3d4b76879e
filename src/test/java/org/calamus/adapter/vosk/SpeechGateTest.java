package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.calamus.adapter.vosk.SpeechGate.Decision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpeechGateTest {

  private final SpeechGate gate = new SpeechGate(450);

  @Test
  void hearIsQuietWhenThereIsOnlyTheRoom() {
    assertThat(changes(Sounds.room(10_000))).isEmpty();
  }

  @Test
  void hearBeginsAndEndsOnceWhenThereIsOneBurst() {
    assertThat(changes(Sounds.room(1_000), Sounds.noise(500, 2_000), Sounds.room(1_000)))
        .containsExactly("BEGINS at 1050", "ENDS at 2000");
  }

  @Test
  void hearGoesOnWhenThePauseIsShorterThanTheTrailingSilence() {
    short[] burst = Sounds.noise(300, 2_000);

    assertThat(changes(Sounds.room(1_000), burst, Sounds.room(400), burst, Sounds.room(1_000)))
        .containsExactly("BEGINS at 1050", "ENDS at 2500");
  }

  @Test
  void hearIgnoresAClick() {
    assertThat(changes(Sounds.room(1_000), Sounds.noise(30, 15_000), Sounds.room(1_000))).isEmpty();
  }

  @Test
  void hearIgnoresRumble() {
    short[] wind = new short[16 * 4_000];
    for (int i = 0; i < wind.length; i++) {
      wind[i] = (short) (300 * Math.sin(2 * Math.PI * 4 * i / 16_000));
    }

    assertThat(changes(wind)).isEmpty();
  }

  @Test
  void hearTakesASteadyNoiseForTheFloorAfterFiveSeconds() {
    short[] fan = Sounds.noise(7_000, 300);
    assertThat(changes(fan)).hasSize(2).element(1).asString().startsWith("ENDS");

    assertThat(changes(Sounds.noise(3_000, 300))).isEmpty();
    assertThat(changes(Sounds.noise(500, 3_000), Sounds.noise(1_000, 300))).hasSize(2);
  }

  @Test
  void hearTakesTalkInTheRoomForTheFloorThoughItHasPauses() {
    short[] syllable = Sounds.join(Sounds.noise(200, 300), Sounds.noise(100, 60));
    short[] talk = new short[0];
    for (int i = 0; i < 60; i++) {
      talk = Sounds.join(talk, syllable);
    }
    changes(talk);

    assertThat(changes(talk)).isEmpty();
    assertThat(changes(Sounds.noise(600, 3_000), talk)).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 37, 160, 800, 1_600})
  void hearFindsTheSameUtteranceWhateverTheBlocks(int length) {
    short[] all =
        Sounds.join(Sounds.room(1_000), Sounds.recording("rms-nine-two"), Sounds.room(1_000));
    List<Decision> seen = new ArrayList<>();
    for (int at = 0; at < all.length; at += length) {
      Decision decision = gate.hear(Arrays.copyOfRange(all, at, Math.min(all.length, at + length)));
      if (decision == Decision.BEGINS || decision == Decision.ENDS) {
        seen.add(decision);
      }
    }

    assertThat(seen).containsExactly(Decision.BEGINS, Decision.ENDS);
    assertThat(gate.voicedMillis()).isBetween(400, 1_000);
  }

  @Test
  void speechLevelLeavesPausesOut() {
    changes(
        Sounds.room(1_000), Sounds.noise(400, 3_277), Sounds.room(300), Sounds.noise(400, 3_277));

    assertThat(gate.speechLevel()).isBetween(-21.5, -19.5);
    assertThat(gate.floor()).isBetween(-68.0, -64.0);
  }

  @Test
  void restartForgetsTheSpeech() {
    changes(Sounds.room(1_000), Sounds.noise(500, 2_000));
    gate.restart();

    assertThat(gate.voicedMillis()).isZero();
    assertThat(changes(Sounds.room(1_000))).isEmpty();
  }

  /** The changes over sound in blocks of 50 ms, each with the end of its block. */
  private List<String> changes(short[]... parts) {
    short[] all = Sounds.join(parts);
    List<String> seen = new ArrayList<>();
    for (int at = 0; at + 800 <= all.length; at += 800) {
      Decision decision = gate.hear(Arrays.copyOfRange(all, at, at + 800));
      if (decision == Decision.BEGINS || decision == Decision.ENDS) {
        seen.add(decision + " at " + (at + 800) / 16);
      }
    }
    return seen;
  }
}
