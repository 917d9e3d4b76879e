package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The small parts of the ears. */
class EarPartsTest {

  @Test
  void jsonKeepsRepeatsAndAddsTheUnknownWordOnce() {
    assertThat(Decoder.json(List.of("one", "one", "say \"x\"")))
        .isEqualTo("[\"one\",\"one\",\"say \\\"x\\\"\",\"[unk]\"]");
    assertThat(Decoder.json(List.of("[unk]", "one"))).isEqualTo("[\"[unk]\",\"one\"]");
  }

  @ParameterizedTest
  @ValueSource(doubles = {40, 200, 1_000, 4_000, 10_000})
  void levelControlComesNearTheTargetWithoutClipping(double rms) {
    LevelControl control = new LevelControl();
    short[] speech = Sounds.noise(50, rms);
    short[] out = speech;
    for (int i = 0; i < 100; i++) {
      control.learn(speech);
      out = control.apply(speech);
    }

    double energy = 0;
    for (short sample : out) {
      energy += (double) sample * sample;
    }
    double level = Decibels.ofAmplitude(Math.sqrt(energy / out.length));
    // the softest one would need more than the largest gain
    assertThat(level).isBetween(rms < 100 ? -34.0 : -23.0, -19.0);
    assertThat(Decibels.peak(out)).isLessThanOrEqualTo(32_000);
  }

  @Test
  void recentSoundKeepsTheNewest() {
    RecentSound recent = new RecentSound(4);
    recent.add(new short[] {1, 2, 3});
    recent.add(new short[] {4, 5});
    assertThat(recent.samples()).containsExactly(2, 3, 4, 5);
    recent.keepNewest(2);
    assertThat(recent.samples()).containsExactly(4, 5);
    recent.add(new short[] {6});
    assertThat(recent.samples()).containsExactly(4, 5, 6);
    recent.keepNewest(-1);
    assertThat(recent.samples()).isEmpty();
  }

  @Test
  void silenceWatchIsSoonSureAtTheStartAndLateAfterSound() {
    SilenceWatch watch = new SilenceWatch();
    assertThat(watch.hear(2 * 16_000, 0)).isEqualTo(SilenceWatch.Change.NONE);
    assertThat(watch.hear(16_000, 3)).isEqualTo(SilenceWatch.Change.FELL_SILENT);
    assertThat(watch.hear(16_000, 0)).isEqualTo(SilenceWatch.Change.NONE);
    assertThat(watch.hear(800, 4)).isEqualTo(SilenceWatch.Change.CAME_BACK);
    assertThat(watch.hear(29 * 16_000, 0)).isEqualTo(SilenceWatch.Change.NONE);
    assertThat(watch.hear(16_000, 0)).isEqualTo(SilenceWatch.Change.FELL_SILENT);
  }

  @Test
  void doorLetsNothingInUntilTheTailIsOver() {
    Door door = new Door();
    assertThat(door.admits(800)).isTrue();
    door.shut();
    assertThat(door.admits(800)).isFalse();
    door.open(1_600);
    assertThat(door.admits(800)).isFalse();
    assertThat(door.admits(800)).isFalse();
    assertThat(door.admits(800)).isTrue();
    // opening an open door starts no new tail
    door.open(1_600);
    assertThat(door.admits(800)).isTrue();
  }

  @Test
  void doorDropsWhatWasHeardBeforeItWasShut() {
    Door door = new Door();
    long count = door.shutCount();
    List<String> posted = new ArrayList<>();
    door.ifNotShutSince(count, () -> posted.add("before"));
    door.shut();
    door.openAtOnce();
    door.ifNotShutSince(count, () -> posted.add("after"));

    assertThat(posted).containsExactly("before");
  }
}
