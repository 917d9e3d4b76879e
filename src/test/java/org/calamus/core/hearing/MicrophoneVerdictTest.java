package org.calamus.core.hearing;

import static org.assertj.core.api.Assertions.assertThat;

import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

class MicrophoneVerdictTest {

  private final SelfTest test = new SelfTest(Fenwick.form(), Fenwick.vocabulary());

  @Test
  void ofIsGoodWhenAllIsRightAndClear() {
    MicrophoneVerdict verdict = MicrophoneVerdict.of(new Levels(-60, -25, 0), 10, 10);
    assertThat(verdict.grade()).isEqualTo(MicrophoneVerdict.Grade.GOOD);
    assertThat(verdict.sentence()).isEqualTo("Good: 10 of 10 right, 35 dB above the noise.");
    assertThat(verdict.advice()).isEmpty();
  }

  @Test
  void ofIsUsableWithAdviceWhenOneThingIsAmiss() {
    assertThat(MicrophoneVerdict.of(new Levels(-60, -25, 0), 9, 10).grade())
        .isEqualTo(MicrophoneVerdict.Grade.USABLE);
    assertThat(MicrophoneVerdict.of(new Levels(-60, -25, 6), 10, 10).advice())
        .singleElement()
        .asString()
        .startsWith("It clips");
    assertThat(MicrophoneVerdict.of(new Levels(-80, -46, 0), 10, 10).advice())
        .singleElement()
        .asString()
        .startsWith("The microphone is too quiet");
    assertThat(MicrophoneVerdict.of(new Levels(-49, -25, 0), 10, 10).advice())
        .singleElement()
        .asString()
        .contains("24 dB between voice and noise");
  }

  @Test
  void ofIsNotUsableWhenTooFewAreRightOrTheNoiseIsNear() {
    assertThat(MicrophoneVerdict.of(new Levels(-60, -25, 0), 6, 10).grade())
        .isEqualTo(MicrophoneVerdict.Grade.NOT_USABLE);
    assertThat(MicrophoneVerdict.of(new Levels(-36, -25, 0), 10, 10).grade())
        .isEqualTo(MicrophoneVerdict.Grade.NOT_USABLE);
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
