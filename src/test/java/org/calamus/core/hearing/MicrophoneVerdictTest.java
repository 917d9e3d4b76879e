package org.calamus.core.hearing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

class MicrophoneVerdictTest {

  private static final Score ALL = new Score(10, 10, 10);

  private final SelfTest test = new SelfTest(Fenwick.form(), Fenwick.vocabulary());

  @Test
  void ofIsGoodWhenAllIsRightAndClear() {
    MicrophoneVerdict verdict = MicrophoneVerdict.of(new Levels(-60, -25, 0), ALL);
    assertThat(verdict.grade()).isEqualTo(MicrophoneVerdict.Grade.GOOD);
    assertThat(verdict.sentence()).isEqualTo("Good: 10 of 10 right, 35 dB above the noise.");
    assertThat(verdict.advice()).isEmpty();
  }

  @Test
  void ofIsUsableWithAdviceWhenOneThingIsAmiss() {
    assertThat(MicrophoneVerdict.of(new Levels(-60, -25, 0), new Score(10, 10, 9)).grade())
        .isEqualTo(MicrophoneVerdict.Grade.USABLE);
    assertThat(MicrophoneVerdict.of(new Levels(-60, -25, 6), ALL).advice())
        .singleElement()
        .asString()
        .startsWith("It clips");
    assertThat(MicrophoneVerdict.of(new Levels(-80, -46, 0), ALL).advice())
        .singleElement()
        .asString()
        .startsWith("The microphone is too quiet");
    assertThat(MicrophoneVerdict.of(new Levels(-49, -25, 0), ALL).advice())
        .singleElement()
        .asString()
        .contains("24 dB between voice and noise");
  }

  @Test
  void ofIsNotUsableWhenTooFewAreRightOrTheNoiseIsNear() {
    assertThat(MicrophoneVerdict.of(new Levels(-60, -25, 0), new Score(10, 8, 6)).grade())
        .isEqualTo(MicrophoneVerdict.Grade.NOT_USABLE);
    assertThat(MicrophoneVerdict.of(new Levels(-36, -25, 0), ALL).grade())
        .isEqualTo(MicrophoneVerdict.Grade.NOT_USABLE);
  }

  @Test
  void ofSaysThatNobodyWasHeardWhereNothingStandsOut() {
    Score nothing = new Score(10, 0, 0);
    MicrophoneVerdict verdict = MicrophoneVerdict.of(new Levels(-66, -64, 0), nothing);
    assertThat(verdict.grade()).isEqualTo(MicrophoneVerdict.Grade.NOT_USABLE);
    assertThat(verdict.sentence()).isEqualTo("Not usable here: nobody was heard.");
    assertThat(verdict.advice()).singleElement().asString().contains("unmute the microphone");
    assertThat(MicrophoneVerdict.of(new Levels(-30, -28, 0), nothing).advice())
        .hasSize(2)
        .last()
        .asString()
        .startsWith("The place is loud");
    // something was said, and loud enough: it was not understood
    assertThat(MicrophoneVerdict.of(new Levels(-66, -30, 0), nothing).sentence())
        .isEqualTo("Not usable here: 0 of 10 right, 36 dB above the noise.");
  }

  @Test
  void ofNamesAHumWhateverTheVerdict() {
    Optional<Hum> hum = Optional.of(new Hum(60, -50, 9));
    MicrophoneVerdict clear = MicrophoneVerdict.of(new Levels(-49, -20, 0, hum), ALL);
    assertThat(clear.grade()).isEqualTo(MicrophoneVerdict.Grade.GOOD);
    assertThat(clear.advice()).singleElement().asString().startsWith("The mains hum at 60 Hz");
    MicrophoneVerdict near = MicrophoneVerdict.of(new Levels(-49, -30, 0, hum), ALL);
    assertThat(near.grade()).isEqualTo(MicrophoneVerdict.Grade.USABLE);
    assertThat(near.advice()).hasSize(2).last().asString().startsWith("The mains hum at 60 Hz");
    assertThat(MicrophoneVerdict.of(new Levels(-49, -48, 0, hum), new Score(10, 0, 0)).advice())
        .hasSize(2)
        .last()
        .asString()
        .startsWith("The mains hum at 60 Hz");
  }

  @Test
  void probesAreTenAndEachAnswersItself() {
    assertThat(test.probes())
        .hasSize(10)
        .allSatisfy(
            p ->
                assertThat(test.answer(p, Utterance.of(p.words())))
                    .isInstanceOf(Answer.Right.class));
  }

  @Test
  void answerTellsWhatWasHeardInstead() {
    Probe age = test.probes().get(3);
    assertThat(test.answer(age, Utterance.of("hatching year")))
        .isEqualTo(new Answer.HeardAs("hatching year"));
    assertThat(test.answer(age, Utterance.of("[unk]"))).isEqualTo(new Answer.NotHeard());
  }
}
