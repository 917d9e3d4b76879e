package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.boot.MicrophoneTrial.AtEnd;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.hearing.Levels;
import org.calamus.core.hearing.MicrophoneCheck;
import org.calamus.core.hearing.MicrophoneVerdict.Grade;
import org.calamus.core.hearing.PastChecks;
import org.calamus.core.hearing.SelfTest;
import org.calamus.core.speech.Utterance;
import org.calamus.port.MicrophoneChecks;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

/** What is said and remembered at the end of a check. */
class MicrophoneCommandTest {

  private static final Instant NOW = Instant.parse("2026-03-14T06:30:00Z");
  private static final Levels CLEAR = new Levels(-60, -25, 0);

  private final ByteArrayOutputStream printed = new ByteArrayOutputStream();
  private final PrintStream out = new PrintStream(printed, true, StandardCharsets.UTF_8);
  private final List<MicrophoneCheck> kept = new ArrayList<>();
  private final MicrophoneCommand live = command(Optional.empty());

  private final MicrophoneChecks checks =
      new MicrophoneChecks() {
        @Override
        public PastChecks past() {
          return new PastChecks(kept);
        }

        @Override
        public void keep(MicrophoneCheck check) {
          kept.add(check);
        }
      };

  private MicrophoneCommand command(Optional<Path> recording) {
    return new MicrophoneCommand(new Options(), recording, () -> NOW, out);
  }

  private MicrophoneTrial begun() {
    SelfTest test = new SelfTest(Fenwick.form(), Fenwick.vocabulary());
    PrintStream nowhere =
        new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    MicrophoneTrial trial =
        new MicrophoneTrial(test, nowhere, AtEnd.NO_VERDICT, () -> {}, grammar -> {});
    trial.hear(new Event.PartUp(NOW, Part.EARS, "headset"));
    return trial;
  }

  private MicrophoneTrial answered() {
    MicrophoneTrial trial = begun();
    for (int i = 0; i < 15; i++) {
      trial.hear(new Event.LevelMeasured(NOW, -60, false));
    }
    new SelfTest(Fenwick.form(), Fenwick.vocabulary())
        .probes()
        .forEach(p -> trial.hear(new Event.Heard(NOW, Utterance.of(p.words()), NOW)));
    return trial;
  }

  private List<String> lines() {
    return printed.toString(StandardCharsets.UTF_8).lines().toList();
  }

  @Test
  void verdictIsSaidAndRememberedWithTheNameAndTheTime() {
    assertThat(live.verdict(answered(), CLEAR, checks)).isEqualTo(ExitCode.DONE);
    String sentence = "Good: 10 of 10 right, 35 dB above the noise.";
    assertThat(lines()).containsExactly(sentence);
    assertThat(kept).containsExactly(new MicrophoneCheck("headset", NOW, Grade.GOOD, sentence));
  }

  @Test
  void verdictThatItWillNotDoIsAFailureWithAdvice() {
    Levels loud = new Levels(-30, -25, 0);
    assertThat(live.verdict(answered(), loud, checks)).isEqualTo(ExitCode.FAILURE);
    assertThat(lines()).hasSize(2).first().asString().startsWith("Not usable here");
    assertThat(kept).singleElement().extracting(MicrophoneCheck::grade).isEqualTo(Grade.NOT_USABLE);
  }

  @Test
  void verdictOnARecordingIsNotRemembered() {
    MicrophoneCommand command = command(Optional.of(Path.of("a.wav")));
    assertThat(command.verdict(answered(), CLEAR, checks)).isEqualTo(ExitCode.DONE);
    assertThat(lines()).hasSize(1);
    assertThat(kept).isEmpty();
  }

  @Test
  void verdictIsNoneWhereTheMicrophoneFailed() {
    MicrophoneTrial trial = begun();
    trial.hear(new Event.PartDown(NOW, Part.EARS, "The microphone is silent; unmute it."));
    assertThat(live.verdict(trial, CLEAR, checks)).isEqualTo(ExitCode.MISSING);
    assertThat(lines()).containsExactly("The microphone is silent; unmute it.");
    assertThat(kept).isEmpty();
  }

  @Test
  void verdictStandsThoughItCannotBeRemembered() {
    MicrophoneChecks full =
        new MicrophoneChecks() {
          @Override
          public PastChecks past() {
            return new PastChecks(List.of());
          }

          @Override
          public void keep(MicrophoneCheck check) {
            throw new KeepException("The verdict is not remembered.", new IOException());
          }
        };
    assertThat(live.verdict(answered(), CLEAR, full)).isEqualTo(ExitCode.DONE);
    assertThat(lines()).hasSize(2).last().isEqualTo("The verdict is not remembered.");
  }
}
