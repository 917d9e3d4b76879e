package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One word takes back the last thing, whatever it was; again: one more. */
class TakingBackTest {

  private static Talk nuthatch() {
    return Talk.atFenwick()
        .say("two eight four one five five six zero one")
        .say("white breasted nuthatch")
        .say("second year")
        .say("male");
  }

  private static Talk withStrings() {
    return WholeRecord.talk();
  }

  @Test
  void goesBackToTheFirstValueAndSaysWhenThereIsNoMore() {
    Talk talk = nuthatch().say("correction").say("correction").say("correction");
    assertThat(talk.say("correction").record().orElseThrow().entries()).isEmpty();
    assertThat(talk.say("correction").lastSpoken()).isEqualTo("nothing to take back");
  }

  @Test
  void leavesASavedRecordAsItIsAndSaysSo() {
    Talk talk = nuthatch().say("save record");
    talk.say("correction");
    assertThat(talk.lastSpoken()).isEqualTo("the last bird is saved. nothing to take back");
    assertThat(talk.view().message()).contains("record 1 is saved and stays as it is");
    assertThat(talk.saved()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"correction", "negative"})
  void goesBackToASkippedField(String word) {
    Talk talk = nuthatch().say("next field").say(word);
    assertThat(talk.lastSpoken()).isEqualTo("back. wing");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.say(word).field(FieldId.SEX)).isEqualTo("-");
  }

  @Test
  void bringsAnErasedValueBackAndThenGoesOnBack() {
    Talk talk = nuthatch().say("erase sex").say("correction");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.say("correction").field(FieldId.SEX)).isEqualTo("-");
  }

  @Test
  void takesBackAKeptDoubt() {
    Talk talk = nuthatch().say("two nine").say("affirm").say("correction");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.lastSpoken()).isEqualTo("wing taken back. wing");
  }

  @Test
  void takesBackWhatTheScaleSent() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.empty())).say("white breasted nuthatch");
    talk.weigh("0.0", "22.3", "22.3");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(talk.say("correction").field(FieldId.MASS)).isEqualTo("-");
    assertThat(talk.weigh("22.3", "22.3").field(FieldId.MASS)).as("the same load").isEqualTo("-");
  }

  @Test
  void takesBackWhatWasConcludedWithIt() {
    Talk talk = withStrings().say("white breasted nuthatch").say("six zero one");
    assertThat(talk.field(FieldId.BAND_SIZE)).isEqualTo("1B");
    talk.say("correction");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.field(FieldId.BAND_SIZE)).isEqualTo("-");
    assertThat(talk.lastSpoken()).isEqualTo("band taken back. band size one b. next six zero one");
  }

  @Test
  void takesBackTheKindThatABandHadConcluded() {
    Talk talk = withStrings().say("white breasted nuthatch").say("six zero one");
    talk.say("second year").say("male").say("save record");
    talk.say("band number two eight four one five five six zero one");
    assertThat(talk.field(FieldId.KIND)).isEqualTo("R");
    talk.say("correction");
    assertThat(talk.record().orElseThrow().entries()).isEmpty();
  }

  @Test
  void correctsTheBandAndNotTheSizeConcludedFromIt() {
    Talk talk = withStrings().say("white breasted nuthatch").say("six zero one");
    talk.say("correction six zero two").say("out of order");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55602");
  }

  @Test
  void goesBackInABirdOfAnEarlierSession() {
    CaptureRecord left = nuthatch().record().orElseThrow();
    Talk talk = new Talk(Fenwick.setup(), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.of(left))).say("affirm").say("correction");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("-");
    assertThat(talk.field(FieldId.AGE)).isEqualTo("SY");
  }

  @ParameterizedTest
  @ValueSource(strings = {"correction nine three", "negative nine three"})
  void correctsTheFieldEchoedAndNotTheOneAsked(String words) {
    Talk talk = nuthatch().say("nine two");
    assertThat(talk.view().asked()).isEqualTo("Mass, g");
    talk.say(words);
    assertThat(talk.field(FieldId.WING)).isEqualTo("93");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("-");
    assertThat(talk.lastSpoken()).isEqualTo("wing nine three, was nine two. mass");
  }

  @Test
  void correctsTheFieldThatWasJustTakenBack() {
    Talk talk = nuthatch().say("nine two").say("correction").say("correction nine three");
    assertThat(talk.field(FieldId.WING)).isEqualTo("93");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
  }

  @Test
  void saysWhatStaysWhereACorrectionIsRefused() {
    Talk talk = nuthatch().say("nine two").say("correction nine");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.lastSpoken()).endsWith("wing stays nine two");
    assertThat(talk.view().asked()).isEqualTo("Wing chord, mm");
  }

  @Test
  void saysWhatAValueGivenUnaskedTakesThePlaceOf() {
    Talk talk = nuthatch().say("nine two").say("wing nine five");
    assertThat(talk.lastSpoken()).isEqualTo("wing nine five, was nine two. mass");
    assertThat(talk.say("wing nine five").lastSpoken()).isEqualTo("wing nine five. mass");
  }

  @Test
  void aNamedFieldTellsItsValueAndTakesTheNext() {
    Talk talk = nuthatch().say("nine two").say("wing");
    assertThat(talk.lastSpoken()).isEqualTo("wing, now nine two");
    assertThat(talk.say("nine five").field(FieldId.WING)).isEqualTo("95");
  }

  @ParameterizedTest
  @ValueSource(strings = {"previous field", "+94"})
  void goesBackAFieldWithoutChangingIt(String way) {
    Talk talk = nuthatch();
    talk = way.startsWith("+") ? talk.keys(way) : talk.say(way);
    assertThat(talk.lastSpoken()).isEqualTo("sex, now male");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.say("female").field(FieldId.SEX)).isEqualTo("F");
  }

  @Test
  void goingOnDropsAValueInQuestionAndSaysSo() {
    Talk talk = nuthatch().say("two nine").say("next field");
    assertThat(talk.lastSpoken()).isEqualTo("wing not taken. mass");
    assertThat(talk.view().message()).isEqualTo("Wing chord not taken.");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.say("correction").view().asked()).isEqualTo("Wing chord, mm");
  }

  @Test
  void anotherFieldDropsAValueInQuestionAndSaysSo() {
    Talk talk = nuthatch().say("two nine").say("weight");
    assertThat(talk.lastSpoken()).isEqualTo("wing not taken. mass");
    assertThat(nuthatch().say("two nine").say("wing").lastSpoken()).isEqualTo("wing");
  }

  @Test
  void goingOnNeverAnswersAQuestionThatLosesSomething() {
    Talk talk = nuthatch().say("abandon record").say("next field");
    assertThat(talk.view().question()).isPresent();
    assertThat(talk.lastSpoken()).isEqualTo("answer affirm or negative first");
  }
}
