package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.calamus.boot.MicrophoneTrial.AtEnd;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.hearing.Probe;
import org.calamus.core.hearing.Score;
import org.calamus.core.hearing.SelfTest;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

class MicrophoneTrialTest {

  private static final Instant NOW = Instant.parse("2026-03-14T06:30:00Z");

  private final SelfTest test = new SelfTest(Fenwick.form(), Fenwick.vocabulary());
  private final ByteArrayOutputStream printed = new ByteArrayOutputStream();
  private final List<Grammar> grammars = new ArrayList<>();
  private int begins;

  private MicrophoneTrial trial(AtEnd atEnd) {
    return new MicrophoneTrial(
        test,
        new PrintStream(printed, true, StandardCharsets.UTF_8),
        atEnd,
        () -> begins++,
        grammars::add);
  }

  private static void quiet(MicrophoneTrial trial, int fifths) {
    for (int i = 0; i < fifths; i++) {
      trial.hear(new Event.LevelMeasured(NOW, -60, false));
    }
  }

  private static void said(MicrophoneTrial trial, String words) {
    trial.hear(new Event.Heard(NOW, Utterance.of(words), NOW));
  }

  private List<String> lines() {
    return printed.toString(StandardCharsets.UTF_8).lines().toList();
  }

  @Test
  void hearsThePlaceForThreeSecondsBeforeItAsks() {
    MicrophoneTrial trial = trial(AtEnd.NO_VERDICT);
    trial.hear(new Event.PartUp(NOW, Part.EARS, "headset"));
    quiet(trial, 14);
    said(trial, "save record"); // somebody talks: it answers nothing
    assertThat(lines()).isEmpty();
    assertThat(begins).isZero();
    quiet(trial, 1);
    assertThat(begins).isEqualTo(1);
    assertThat(lines()).containsExactly("Say: " + test.probes().get(0).spoken());
    assertThat(grammars).containsExactly(test.grammar(test.probes().get(0)));
    assertThat(trial.microphone()).isEqualTo("headset");
  }

  @Test
  void endsWhenEverythingWasHeardRightly() {
    MicrophoneTrial trial = trial(AtEnd.NO_VERDICT);
    quiet(trial, 15);
    for (Probe probe : test.probes()) {
      assertThat(trial.isDone()).isFalse();
      said(trial, probe.words());
    }
    assertThat(trial.isDone()).isTrue();
    assertThat(trial.score()).isEqualTo(new Score(10, 10, 10));
    assertThat(lines()).filteredOn("  right"::equals).hasSize(10);
    assertThat(lines()).doesNotContain("Once more:");
  }

  @Test
  void asksOnceMoreForWhatWasMissedAndCountsThatToo() {
    MicrophoneTrial trial = trial(AtEnd.NO_VERDICT);
    quiet(trial, 15);
    List<Probe> probes = test.probes();
    quiet(trial, 50); // the first is not answered within ten seconds
    said(trial, "save record"); // the second is heard as something else
    probes.stream().skip(2).forEach(p -> said(trial, p.words()));
    assertThat(lines()).contains("  not heard", "  heard as \"save record\"", "Once more:");
    assertThat(lines()).endsWith("Say: " + probes.get(0).spoken());
    said(trial, probes.get(0).words());
    said(trial, "[unk]");
    assertThat(trial.isDone()).isTrue();
    assertThat(trial.score()).as("the second was heard once").isEqualTo(new Score(10, 10, 9));
  }

  @Test
  void givesUpWhenNobodySpeaks() {
    MicrophoneTrial trial = trial(AtEnd.NO_VERDICT);
    quiet(trial, 15 + 20 * 50);
    assertThat(trial.isDone()).isTrue();
    assertThat(trial.score()).isEqualTo(new Score(10, 0, 0));
    assertThat(trial.trouble()).isEmpty();
  }

  @Test
  void hasNoVerdictWhenTheMicrophoneFails() {
    MicrophoneTrial trial = trial(AtEnd.NO_VERDICT);
    quiet(trial, 15);
    trial.hear(new Event.PartDown(NOW, Part.VOICE, "No speaker."));
    assertThat(trial.isDone()).as("the voice is not needed").isFalse();
    trial.hear(new Event.PartDown(NOW, Part.EARS, "The microphone stopped."));
    assertThat(trial.isDone()).isTrue();
    assertThat(trial.trouble()).contains("The microphone stopped.");
  }

  @Test
  void countsWhatARecordingDidNotAnswerAsNotHeard() {
    MicrophoneTrial trial = trial(AtEnd.NOT_HEARD);
    quiet(trial, 15);
    said(trial, test.probes().get(0).words());
    trial.hear(new Event.PartDown(NOW, Part.EARS, "a.wav has ended."));
    assertThat(trial.trouble()).isEmpty();
    assertThat(trial.score()).isEqualTo(new Score(10, 1, 1));
  }

  @Test
  void hasNoVerdictOnARecordingThatEndsBeforeAnythingIsAsked() {
    MicrophoneTrial trial = trial(AtEnd.NOT_HEARD);
    quiet(trial, 14);
    trial.hear(new Event.PartDown(NOW, Part.EARS, "a.wav has ended."));
    assertThat(trial.trouble()).contains("a.wav has ended.");
  }
}
