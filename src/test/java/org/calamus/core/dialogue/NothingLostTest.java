package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;

/** What was said, keyed or weighed while something else was going on is not lost unseen. */
class NothingLostTest {

  private static Talk nuthatch() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    return talk.event(new Event.Started(talk.now(), Optional.empty()))
        .say("two eight four one five five six zero one")
        .say("white breasted nuthatch second year male");
  }

  @Test
  void aSettledMassFillsItsFieldWithTheLinesItCameFrom() {
    Talk talk = nuthatch().weigh("0.0", "22.3", "22.3");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    Provenance provenance =
        talk.record().orElseThrow().entry(FieldId.MASS).orElseThrow().provenance();
    assertThat(provenance.way()).isEqualTo(Provenance.Way.MEASURED);
    assertThat(provenance.detail()).contains("ST,22.3 g");
  }

  @Test
  void aMassThatSettlesDuringAQuestionIsTakenAfterIt() {
    Talk talk = nuthatch().say("two nine").weigh("0.0", "22.3", "22.3");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("-");
    talk.spoken();
    talk.say("affirm");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(talk.spoken())
        .containsExactly("wing two nine. mass two two point three. save record");
  }

  @Test
  void aMassThatSettlesDuringAnotherQuestionIsTakenAfterItToo() {
    Talk talk = nuthatch().say("abandon record").weigh("0.0", "22.3", "22.3").say("negative");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(talk.lastSpoken()).isEqualTo("going on. mass two two point three. wing");
  }

  @Test
  void aMassThatSettlesWhileKeysAreStruckLeavesThemAlone() {
    Talk talk = nuthatch().keys("9").weigh("0.0", "22.3", "22.3");
    assertThat(talk.view().big()).isEqualTo("9");
    talk.keys("2\n");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
  }

  @Test
  void aWaitingMassIsOfferedBeforeTheRecordIsSaved() {
    Talk talk = nuthatch().keys("9").weigh("0.0", "22.3", "22.3").keys("-").say("save record");
    assertThat(talk.saved()).isZero();
    assertThat(talk.lastSpoken()).isEqualTo("mass two two point three. wing");
    assertThat(talk.say("save record").saved()).isEqualTo(1);
  }

  @Test
  void whatFollowsADoubtInOneBreathIsTakenWhateverTheAnswer() {
    String breath = "wing two nine weight two two point three";
    assertThat(nuthatch().say(breath).say("affirm").field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(nuthatch().say(breath).say("negative").field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(nuthatch().say(breath).say("nine two").field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(nuthatch().say(breath).keys("92\n").field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(nuthatch().say(breath).say("age").field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(nuthatch().say(breath).say("nine two weight two three").field(FieldId.MASS))
        .as("the later word counts")
        .isEqualTo("23");
  }

  @Test
  void anUnclearAnswerLeavesTheQuestionOpen() {
    Talk talk = nuthatch().say("two nine").say("eleven four");
    assertThat(talk.view().question()).isPresent();
    assertThat(talk.say("affirm").field(FieldId.WING)).isEqualTo("29");
  }

  @Test
  void aDoubtedFieldIsAskedAgainWhenAnotherIsGivenInstead() {
    Talk talk =
        Talk.atFenwick()
            .say("two eight four one five five six zero one white breasted nuthatch")
            .say("wing two nine")
            .say("sex male");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.lastSpoken()).isEqualTo("male. wing");
  }

  @Test
  void aDoubtThatIsKeptDoesNotSkipTheFieldThatWasAsked() {
    Talk talk =
        Talk.atFenwick()
            .say("two eight four one five five six zero one white breasted nuthatch")
            .say("wing two nine")
            .say("affirm");
    assertThat(talk.lastSpoken()).isEqualTo("wing two nine. age");
  }

  @Test
  void whatWasTakenBeforeAMissIsToldInTheSamePhrase() {
    Talk talk = nuthatch();
    talk.spoken();
    talk.say("wing nine two weight eleven four");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.spoken())
        .containsExactly("wing nine two. say eleven point four, or one one four");
  }

  @Test
  void theSpeechHeardWhileTheVoiceSpeaksIsItsOwnEcho() {
    Talk talk = nuthatch();
    talk.event(new Event.VoiceBegan(talk.now())).say("nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    talk.event(new Event.VoiceEnded(talk.now())).say("nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void aScaleThatGoesAwayInMidWeighingHasSettledNothing() {
    Talk talk = nuthatch().weigh("0.0", "22.3");
    talk.event(new Event.PartDown(talk.now(), Part.SCALE, "The scale is gone; plug it in."));
    assertThat(talk.view().live()).isEmpty();
    assertThat(talk.weigh("22.3", "22.3").field(FieldId.MASS)).isEqualTo("-");
  }

  @Test
  void twoScalesOfAKindSettleEachForItself() {
    Talk talk = nuthatch();
    // the pan of one is empty while the bird lies on the other, whose readings come in between
    for (int i = 0; i < 4; i++) {
      talk.weighAt("/dev/ttyUSB0", "0.0").weighAt("/dev/ttyUSB1", i == 0 ? "0.0" : "22.3");
    }
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
  }

  @Test
  void twoScalesOfAKindDoNotSettleTogether() {
    Talk talk = nuthatch().weighAt("/dev/ttyUSB0", "0.0").weighAt("/dev/ttyUSB1", "0.0");
    talk.weighAt("/dev/ttyUSB0", "22.3").weighAt("/dev/ttyUSB1", "22.3");
    assertThat(talk.field(FieldId.MASS)).as("one reading of each").isEqualTo("-");
    // a load that was on the second when it began to send does not count, though the first is empty
    Talk other = nuthatch().weighAt("/dev/ttyUSB0", "0.0");
    other.weighAt("/dev/ttyUSB1", "22.3", "22.3", "22.3", "22.3");
    assertThat(other.field(FieldId.MASS)).as("never seen empty").isEqualTo("-");
    assertThat(other.view().live()).hasValue("22.3 g  stable  empty it first");
    assertThat(other.weighAt("/dev/ttyUSB0", "0.0").view().live()).hasValue("0.0 g  stable");
  }

  @Test
  void aScaleThatGoesAwayLeavesTheOtherItsWeighing() {
    Talk talk = nuthatch().weighAt("/dev/ttyUSB0", "0.0").weighAt("/dev/ttyUSB1", "0.0", "22.3");
    talk.event(
        new Event.PartDown(
            talk.now(), Part.SCALE, "One is gone; plug it in.", Optional.of("/dev/ttyUSB0")));
    assertThat(talk.view().live()).hasValue("22.3 g  stable");
    assertThat(talk.weighAt("/dev/ttyUSB1", "22.3").field(FieldId.MASS)).isEqualTo("22.3");
  }

  @Test
  void theNumberOfARecordIsNeverGivenTwice() {
    Talk talk = nuthatch();
    long first = talk.record().map(CaptureRecord::id).orElseThrow();
    talk.say("abandon record").say("affirm").say("male");
    assertThat(talk.record().map(CaptureRecord::id)).contains(first + 1);
  }

  @Test
  void aTensHeardAsATeenIsTakenAndReadBackWhereOnlyTheTensFits() {
    Talk talk = nuthatch().say("eighteen nine");
    assertThat(talk.field(FieldId.WING)).isEqualTo("89");
    assertThat(talk.lastSpoken()).startsWith("wing eight nine");
  }

  @Test
  void aTensHeardAsATeenIsTakenBackWhereItWasSomethingElse() {
    Talk talk = nuthatch().say("eighteen nine").say("correction");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.say("nine two").field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void aTeenAndADigitIsNotAskedAboutWhereThePointMayBeMissing() {
    Talk talk = nuthatch().say("nine two").say("nineteen five");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("-");
    assertThat(talk.lastSpoken()).startsWith("say it digit by digit");
    assertThat(talk.say("affirm").field(FieldId.MASS)).isEqualTo("-");
  }
}
