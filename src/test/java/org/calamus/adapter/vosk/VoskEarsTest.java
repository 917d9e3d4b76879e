package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The real recogniser on real sound. */
@Timeout(60)
class VoskEarsTest {

  private static final AudioSource.Read ENDED = new AudioSource.Ended();

  @ParameterizedTest
  @CsvSource({
    "rms-nine-two, nine two",
    "rms-seven-three-point-five, seven three point five",
    "kal16-seven-three-point-five, seven three point five",
    "rms-nine-two-44100-stereo, nine two",
    "rms-nine-two-8000, nine two",
    "rms-nine-two-8000-mulaw, nine two"
  })
  void heardGivesTheWordsWhenARecordingIsPlayed(String file, String words) throws Exception {
    try (EarsRig rig = new EarsRig(wav(file, WavSource.Pace.FAST)).start(EarsRig.NUMBERS)) {
      assertThat(rig.nextText()).isEqualTo(words);
    }
  }

  @Test
  void heardComesAfterTheTrailingSilenceWithoutMoreSpeech() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(Sounds.room(700), Sounds.trimmed("rms-nine-two"), Sounds.room(600));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      // nothing else comes: neither more sound nor an end
      assertThat(rig.nextText()).isEqualTo("nine two");
    }
  }

  @Test
  void heardIsOneUtteranceWhenDigitsAreSaidOneByOne() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(
                Sounds.room(700),
                Sounds.trimmed("rms-one"),
                Sounds.room(300),
                Sounds.trimmed("rms-zero"),
                Sounds.room(300),
                Sounds.trimmed("rms-one"),
                Sounds.room(700))
            .give(ENDED);
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      assertThat(rig.textsUntilTheEnd()).containsExactly("one zero one");
    }
  }

  @Test
  void heardIsTwoUtterancesWhenThePauseIsLong() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(
                Sounds.room(700),
                Sounds.trimmed("rms-one"),
                Sounds.room(800),
                Sounds.trimmed("rms-zero"),
                Sounds.room(800))
            .give(ENDED);
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      assertThat(rig.textsUntilTheEnd()).containsExactly("one", "zero");
    }
  }

  @Test
  void finishUtteranceEndsItWithoutTheTrailingSilence() throws Exception {
    ScriptedSource source =
        new ScriptedSource().give(Sounds.room(700), Sounds.trimmed("rms-nine-two"));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      source.awaitHeard();
      rig.ears.finishUtterance();
      // less than the trailing silence
      source.give(Sounds.room(200));

      assertThat(rig.nextText()).isEqualTo("nine two");
    }
  }

  @Test
  void heardHasTheUnknownWordWhenSpeechIsOutsideTheGrammar() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(Sounds.room(700), Sounds.recording("rms-outside"), Sounds.room(700));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.COMMANDS)) {
      assertThat(rig.nextText()).contains(Word.UNKNOWN).doesNotContain("save record");
    }
  }

  @Test
  void heardTellsWhenAndHowTheWordsWereSaid() throws Exception {
    short[] speech = Sounds.trimmed("rms-seven-three-point-five");
    ScriptedSource source = new ScriptedSource().give(Sounds.room(2_000), speech, Sounds.room(700));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      Event.Heard heard = rig.next(Event.Heard.class);

      List<Word> words = heard.utterance().words();
      int length = speech.length / 16;
      assertThat(words.get(0).startMillis()).isBetween(1_900L, 2_150L);
      assertThat(words.get(3).endMillis()).isBetween(1_850L + length, 2_150L + length);
      assertThat(words).allSatisfy(w -> assertThat(w.confidence()).isBetween(0.5, 1.0));
      assertThat(words)
          .isSortedAccordingTo((a, b) -> Long.compare(a.startMillis(), b.startMillis()));
      assertThat(heard.utterance().loudness()).isBetween(-12, 0);
      assertThat(heard.utterance().pitched())
          .isBetween(Duration.ofMillis(300), Duration.ofMillis(length));
      assertThat(heard.speechEndedAt()).isBefore(heard.at());
    }
  }

  @Test
  void shutForgetsWhatIsSaidUntilTheTailIsOver() throws Exception {
    ScriptedSource source = new ScriptedSource().give(Sounds.room(700));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      source.awaitHeard();
      rig.ears.shut();
      source.give(Sounds.trimmed("rms-nine-two"));
      source.awaitHeard();
      rig.ears.open();
      // the tail: the end of what the voice said is still in the room
      source.give(Arrays.copyOf(Sounds.trimmed("rms-one"), 16 * 190));
      source.give(Sounds.room(700), Sounds.trimmed("rms-zero"), Sounds.room(700)).give(ENDED);

      assertThat(rig.textsUntilTheEnd()).containsExactly("zero");
    }
  }

  @Test
  void shutForgetsTheUtteranceThatHadBegun() throws Exception {
    ScriptedSource source =
        new ScriptedSource().give(Sounds.room(700), Sounds.trimmed("rms-nine-two"));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      source.awaitHeard();
      rig.ears.shut();
      rig.ears.openAtOnce();
      source.give(Sounds.room(700), Sounds.trimmed("rms-one"), Sounds.room(700)).give(ENDED);

      assertThat(rig.textsUntilTheEnd()).containsExactly("one");
    }
  }

  @Test
  void openAtOnceHearsWithoutATail() throws Exception {
    ScriptedSource source = new ScriptedSource().give(Sounds.room(700));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      source.awaitHeard();
      rig.ears.shut();
      rig.ears.open();
      rig.ears.openAtOnce();
      source.give(Sounds.trimmed("rms-nine-two"), Sounds.room(700));

      assertThat(rig.nextText()).isEqualTo("nine two");
    }
  }

  @Test
  void listenForTakesEffectWithTheNextUtterance() throws Exception {
    ScriptedSource source =
        new ScriptedSource().give(Sounds.room(700), Sounds.trimmed("rms-nine-two"));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      source.awaitHeard();
      // in mid-utterance the recogniser would end the process if it were told now
      rig.ears.listenFor(EarsRig.COMMANDS);
      source.give(Sounds.room(700));
      assertThat(rig.nextText()).isEqualTo("nine two");

      source.give(Sounds.trimmed("slt-save-record"), Sounds.room(700));
      assertThat(rig.nextText()).isEqualTo("save record");
    }
  }

  @ParameterizedTest
  @CsvSource({"1.0", "0.3", "0.1", "0.05"})
  void heardGivesTheWordsWhenTheMicrophoneIsQuiet(double gain) throws Exception {
    short[] sound =
        Sounds.join(
            Sounds.room(700),
            Sounds.recording("rms-seven-three-point-five"),
            Sounds.room(700),
            Sounds.recording("rms-nine-two"),
            Sounds.room(700));
    ScriptedSource source = new ScriptedSource().give(Sounds.scaled(sound, gain)).give(ENDED);
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      assertThat(rig.textsUntilTheEnd()).containsExactly("seven three point five", "nine two");
    }
  }

  @Test
  void heardComesAfterMinutesOfSilence() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(Sounds.room(300_000), Sounds.trimmed("rms-nine-two"), Sounds.room(700));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      assertThat(rig.nextText()).isEqualTo("nine two");
    }
  }

  @Test
  void noiseAloneIsNotHeard() throws Exception {
    short[] knock = Sounds.noise(40, 6_000);
    ScriptedSource source =
        new ScriptedSource()
            .give(Sounds.room(2_000), knock, Sounds.room(2_000), knock, Sounds.room(2_000))
            .give(ENDED);
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      assertThat(rig.textsUntilTheEnd()).isEmpty();
    }
  }

  /** The recogniser takes gusts in a hissing room for "one", and is sure of it. */
  @Test
  void wordsOfAGustAreNotBelievedSinceItHasNoPitch() throws Exception {
    ScriptedSource source = new ScriptedSource().give(hissing(new short[3_000 * 16]));
    for (int seed = 1; seed <= 8; seed++) {
      source.give(hissing(Sounds.gust(900, seed)), hissing(new short[1_000 * 16]));
    }
    source.give(ENDED);
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      List<Utterance> heard = rig.utterancesUntilTheEnd();

      assertThat(heard).extracting(Utterance::text).contains("one");
      assertThat(heard)
          .allSatisfy(
              u ->
                  assertThat(Credibility.of(u, Credibility.Limits.usual()).signs())
                      .contains(Credibility.Sign.NO_VOICE));
    }
  }

  private static short[] hissing(short[] sound) {
    return Sounds.mixed(sound, Sounds.noise(sound.length / 16, 250));
  }

  @Test
  void levelIsMeasuredFiveTimesASecondAndTellsSpeech() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(Sounds.room(1_000), Sounds.recording("rms-outside"), Sounds.room(1_000));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      source.awaitHeard();
      List<Event.LevelMeasured> levels =
          rig.events.stream()
              .filter(Event.LevelMeasured.class::isInstance)
              .map(Event.LevelMeasured.class::cast)
              .toList();

      assertThat(levels).hasSizeBetween(26, 28);
      assertThat(levels.get(0).isSpeech()).isFalse();
      assertThat(levels.get(0).decibels()).isBetween(-62, -50);
      assertThat(levels).anyMatch(level -> level.isSpeech() && level.decibels() > -20);
      assertThat(levels.get(levels.size() - 1).isSpeech()).isFalse();
    }
  }

  @Test
  void partIsDownAndUpAgainWhenTheSourceIsLostAndBack() throws Exception {
    ScriptedSource source =
        new ScriptedSource()
            .give(new AudioSource.Lost("The microphone stopped; plug it in again."));
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      assertThat(rig.next(Event.PartUp.class).name()).isEqualTo("scripted sound");
      source.refuse("No microphone can be opened.").refuse("No microphone can be opened.");
      Event.PartDown down = rig.next(Event.PartDown.class);
      assertThat(down.part()).isEqualTo(Part.EARS);
      assertThat(down.sentence()).isEqualTo("The microphone stopped; plug it in again.");
      assertThat(rig.next(Event.PartDown.class).sentence())
          .isEqualTo("No microphone can be opened.");
      // refused twice, said once
      Event.PartUp up = rig.next(Event.PartUp.class);
      assertThat(Duration.between(down.at(), up.at())).isGreaterThan(Duration.ofMillis(1_900));

      source.give(Sounds.room(700), Sounds.trimmed("rms-nine-two"), Sounds.room(700));
      assertThat(rig.nextText()).isEqualTo("nine two");
    }
  }

  @Test
  void partIsDownWhenTheMicrophoneIsSilentAndUpWhenSoundComes() throws Exception {
    ScriptedSource source = new ScriptedSource().give(new short[16 * 3_100]);
    try (EarsRig rig = new EarsRig(source).start(EarsRig.NUMBERS)) {
      rig.next(Event.PartUp.class);
      assertThat(rig.next(Event.PartDown.class).sentence())
          .isEqualTo("The microphone is silent; check that it is plugged in and not muted.");
      source.give(Sounds.room(100));
      assertThat(rig.next(Event.PartUp.class).part()).isEqualTo(Part.EARS);
    }
  }

  @Test
  void partIsDownWhenTheFolderHoldsNoModel(@TempDir Path folder) throws Exception {
    try (EarsRig rig = new EarsRig(folder, new ScriptedSource()).start(EarsRig.NUMBERS)) {
      assertThat(rig.next(Event.PartDown.class).sentence())
          .contains("holds no speech model for grammars");
    }
  }

  @Test
  void partIsDownWhenTheModelIsDamaged(@TempDir Path folder) throws Exception {
    Files.createDirectories(folder.resolve("graph"));
    Files.createFile(folder.resolve("graph/Gr.fst"));
    Files.createFile(folder.resolve("graph/HCLr.fst"));
    try (EarsRig rig = new EarsRig(folder, new ScriptedSource()).start(EarsRig.NUMBERS)) {
      assertThat(rig.next(Event.PartDown.class).sentence()).contains("cannot be loaded");
    }
  }

  @Test
  void numberIsHeardAsOneWithPausesWhereItIsNotWhole() throws Exception {
    short[] digits = Sounds.trimmed("rms-nine-two");
    short[] sound =
        Sounds.join(Sounds.room(2_000), digits, Sounds.room(650), digits, Sounds.room(1_500));
    Grammar.Whole four = new Grammar.Whole(Set.of("nine", "two"), Set.of(4));
    Grammar patient = new Grammar("four digits", EarsRig.NUMBERS.phrases(), four);
    try (EarsRig rig = new EarsRig(new ScriptedSource().give(sound).give(ENDED)).start(patient)) {
      assertThat(rig.textsUntilTheEnd()).containsExactly("nine two nine two");
    }
    try (EarsRig rig =
        new EarsRig(new ScriptedSource().give(sound).give(ENDED)).start(EarsRig.NUMBERS)) {
      assertThat(rig.textsUntilTheEnd()).containsExactly("nine two", "nine two");
    }
  }

  @Test
  void closeEndsQuicklyWhenNothingIsSaid() throws Exception {
    EarsRig rig = new EarsRig(new ScriptedSource().give(Sounds.room(300))).start(EarsRig.NUMBERS);
    rig.next(Event.LevelMeasured.class);
    long start = System.nanoTime();

    rig.close();

    assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(1));
    assertThat(rig.events).noneMatch(Event.PartDown.class::isInstance);
  }

  private static WavSource wav(String name, WavSource.Pace pace) throws URISyntaxException {
    return new WavSource(
        Path.of(VoskEarsTest.class.getResource("/ears/" + name + ".wav").toURI()), pace);
  }
}
