package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.hearing.Timbre;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.port.AudioSource;
import org.calamus.port.TimbreMemory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What is learnt of a voice, and when it is kept. */
@Timeout(60)
class VoiceLearningTest {

  private static final double[] EXPECTED = new double[MelCepstra.COEFFICIENTS];
  private static final short[] SOUND = Sounds.recording("rms-nine-two");

  private final Map<String, Timbre> kept = new HashMap<>();
  private final Suppression suppression = new Suppression();
  private final TimbreMemory memory =
      new TimbreMemory() {
        @Override
        public Optional<Timbre> recall(String microphone) {
          return Optional.ofNullable(kept.get(microphone));
        }

        @Override
        public void keep(String microphone, Timbre timbre) {
          kept.put(microphone, timbre);
        }
      };

  private VoiceLearning learning(Optional<double[]> expected) {
    VoiceLearning learning = new VoiceLearning(expected, memory);
    learning.begin("headset", suppression);
    return learning;
  }

  private static Utterance heard(String word, double confidence) {
    return Utterance.of(List.of(new Word(word, confidence, 0, 300)));
  }

  @Test
  void whatWasSurelySaidIsLearntAndKeptAtTheEnd() {
    VoiceLearning learning = learning(Optional.of(EXPECTED));
    learning.learn(heard("nine", 0.9), SOUND, suppression);

    assertThat(kept).isEmpty();
    learning.keep();
    assertThat(kept.get("headset").frames()).isPositive();
  }

  @Test
  void whatIsInDoubtTeachesNothing() {
    VoiceLearning learning = learning(Optional.of(EXPECTED));
    learning.learn(heard("nine", 0.4), SOUND, suppression);
    learning.learn(heard(Word.UNKNOWN, 0.9), SOUND, suppression);
    learning.learn(Utterance.of(List.of()), SOUND, suppression);
    List<Word> wind = heard("one", 0.9).words();
    Duration length = Duration.ofMillis(500);
    learning.learn(
        new Utterance(wind, List.of(), -20, length, 20, Duration.ZERO), SOUND, suppression);
    learning.keep();

    assertThat(kept).isEmpty();
  }

  @Test
  void itIsKeptMeanwhileForASessionThatEndsByAPulledPlug() {
    VoiceLearning learning = learning(Optional.of(EXPECTED));
    for (int i = 0; i < 25; i++) {
      learning.learn(heard("nine", 0.9), SOUND, suppression);
    }

    assertThat(kept).containsKey("headset");
  }

  @Test
  void eachMicrophoneHasItsOwn() {
    VoiceLearning learning = learning(Optional.of(EXPECTED));
    learning.learn(heard("nine", 0.9), SOUND, suppression);
    learning.begin("built-in", suppression);
    learning.learn(heard("nine", 0.9), Sounds.join(SOUND, SOUND), suppression);
    learning.keep();

    int first = kept.get("headset").frames();
    assertThat(kept.get("built-in").frames()).isBetween(2 * first - 5, 2 * first + 10);
  }

  @Test
  void withAModelOfOthersNothingIsLearnt() {
    VoiceLearning learning = learning(Optional.empty());
    learning.learn(heard("nine", 0.9), SOUND, suppression);
    learning.keep();

    assertThat(kept).isEmpty();
  }

  /**
   * The real recogniser: what it heard is kept under the name of its source when the ears close.
   */
  @Test
  void earsKeepWhatTheyLearntUnlessTheyAreToldToForget() throws Exception {
    for (boolean isLearning : new boolean[] {false, true}) {
      ScriptedSource source =
          new ScriptedSource()
              .give(Sounds.room(2_000), Sounds.trimmed("rms-nine-two"), Sounds.room(600))
              .give(new AudioSource.Ended());
      VoskEars.Settings settings = VoskEars.Settings.usual().learning(isLearning);
      try (EarsRig rig = new EarsRig(source, settings, memory).start(EarsRig.NUMBERS)) {
        assertThat(rig.textsUntilTheEnd()).containsExactly("nine two");
      }
      assertThat(kept.containsKey(source.name())).isEqualTo(isLearning);
    }
    assertThat(kept.get(new ScriptedSource().name()).frames()).isBetween(20, 100);
  }
}
