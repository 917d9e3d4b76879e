package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * That a bird died is asked once, whatever the way in: wrong, it costs more than any other value.
 */
class DeathTest {

  private static final String ASKED = "the bird would be reported dead. keep bird died";

  /** The wing is asked of a bird that has its band. */
  private static Talk talk() {
    return WholeRecord.talk().say("white breasted nuthatch").say("six zero one").say("wing");
  }

  /** Opens a field by its number in the keypad's menu and strikes a value. */
  private static Talk keyed(Talk talk, FieldId field, String digits) {
    List<FieldId> fields =
        WholeRecord.form(CodeSet.LABORATORY).fields().stream().map(FieldSpec::id).toList();
    String number = String.format(Locale.ROOT, "%02d", fields.indexOf(field) + 1);
    return talk.keys("+" + number + digits + "\n");
  }

  private static Entry held(Talk talk, FieldId field) {
    return talk.record().orElseThrow().entry(field).orElseThrow();
  }

  @Test
  void aDeathTakesTwoTurnsByVoice() {
    Talk talk = talk().say("bird died");
    assertThat(talk.lastSpoken()).isEqualTo(ASKED);
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("-");
    assertThat(talk.view().question())
        .contains("Release DIED: the bird would be reported dead. Keep DIED, bird died?");
    talk.say("affirm");
    assertThat(talk.lastSpoken()).isEqualTo("bird died. missing remarks");
    assertThat(held(talk, FieldId.RELEASE).confirmedRules()).containsExactly("release.cost");
    talk.keys("Cold in the net\n");
    assertThat(talk.saved()).as("not asked again before saving").isEqualTo(1);
    assertThat(talk.asSaved(1).code(FieldId.RELEASE)).contains("DIED");
  }

  @Test
  void aDeathIsAskedOnceOnTheKeypad() {
    Talk talk = keyed(talk(), FieldId.RELEASE, "4");
    assertThat(talk.lastSpoken()).isEqualTo(ASKED);
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("-");
    talk.keys("\n");
    assertThat(talk.lastSpoken()).isEqualTo("bird died. missing remarks");
    assertThat(held(talk, FieldId.RELEASE).provenance().way()).isEqualTo(Provenance.Way.KEYED);
    talk.keys("Cold in the net\n");
    assertThat(talk.saved()).isEqualTo(1);
  }

  @Test
  void negativeOnTheKeypadAsksTheReleaseAgain() {
    Talk talk = keyed(talk(), FieldId.RELEASE, "4").keys("-");
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("-");
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.view().asked()).isEqualTo("Release");
    assertThat(talk.keys("1\n").saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).code(FieldId.RELEASE)).contains("EARLY");
  }

  @Test
  void negativeLeavesEverythingAsItWas() {
    Talk talk = talk();
    var before = talk.record();
    talk.say("bird died").say("negative");
    assertThat(talk.record()).isEqualTo(before);
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.view().asked()).isEqualTo("Wing chord, mm");
    assertThat(talk.lastSpoken()).isEqualTo("wing");
    talk.say("nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
  }

  @ParameterizedTest
  @ValueSource(strings = {"released", "released early", "escaped"})
  void aBirdThatGoesFreeNeedsNoQuestionAndAnswersIt(String words) {
    assertThat(talk().say(words).saved()).isEqualTo(1);
    Talk talk = talk().say("bird died").say(words);
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).code(FieldId.RELEASE)).isNotEqualTo(Optional.of("DIED"));
  }

  @Test
  void theKeysOfTheReleaseAnswerTheQuestion() {
    Talk talk = talk().say("bird died").keys("+/");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).code(FieldId.RELEASE)).contains("EARLY");
  }

  @Test
  void aValueGivenMeanwhileIsTakenAndTheQuestionComesBack() {
    for (Talk talk : List.of(talk().say("bird died").say("nine two"), talk().say("bird died"))) {
      if (talk.field(FieldId.WING).equals("-")) {
        talk.keys("92\n");
      }
      assertThat(talk.field(FieldId.WING)).isEqualTo("92");
      assertThat(talk.field(FieldId.RELEASE)).isEqualTo("-");
      assertThat(talk.lastSpoken()).isEqualTo("wing nine two. " + ASKED);
      assertThat(talk.say("affirm").field(FieldId.RELEASE)).isEqualTo("DIED");
    }
  }

  @Test
  void aDigitForTheFieldThatIsAskedIsNoRelease() {
    Talk talk = talk().say("fat").say("bird died").keys("1\n");
    assertThat(talk.saved()).isZero();
    assertThat(talk.field(FieldId.FAT)).isEqualTo("1");
    assertThat(talk.view().question()).isPresent();
  }

  @Test
  void noWithAValueIsNoAndTheValue() {
    Talk talk = talk().say("bird died").say("no nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("-");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void aRefusedValueLeavesTheQuestionOpen() {
    Talk talk = talk().say("bird died").say("nine");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.view().question()).isPresent();
    assertThat(talk.say("affirm").field(FieldId.RELEASE)).isEqualTo("DIED");
  }

  @Test
  void theQuestionThatWasOpenComesBackWhereTheBirdLives() {
    Talk talk = talk().say("two nine");
    String asked = talk.view().question().orElseThrow();
    talk.say("bird died");
    assertThat(talk.lastSpoken()).isEqualTo(ASKED);
    talk.say("negative");
    assertThat(talk.view().question()).contains(asked);
    talk.say("affirm");
    assertThat(talk.field(FieldId.WING)).isEqualTo("29");
    Talk dead = talk().say("two nine").say("bird died").say("affirm");
    assertThat(dead.field(FieldId.RELEASE)).isEqualTo("DIED");
    assertThat(dead.field(FieldId.WING)).isEqualTo("-");
  }

  @Test
  void theQuestionOfSkippedBandsComesBackToo() {
    Talk talk = talk().say("band six zero one").say("correction").say("band six zero four");
    String asked = talk.view().question().orElseThrow();
    assertThat(asked).contains("not accounted for");
    talk.say("bird died").say("negative");
    assertThat(talk.view().question()).contains(asked);
  }

  @Test
  void nextFieldDropsTheDeathAndLeavesNoField() {
    Talk talk = talk().say("bird died").say("next field");
    assertThat(talk.lastSpoken()).isEqualTo("release not taken. wing");
    assertThat(talk.view().asked()).isEqualTo("Wing chord, mm");
    talk.say("bird died").say("wing");
    assertThat(talk.lastSpoken()).startsWith("release not taken");
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("-");
  }

  @Test
  void nothingIsSavedWhileTheQuestionIsOpen() {
    Talk talk = talk().say("bird died").say("save record");
    assertThat(talk.saved()).isZero();
    assertThat(talk.view().question()).isPresent();
  }

  @Test
  void theSameIsNotAskedTwice() {
    Talk talk = talk().say("bird died").say("affirm").say("bird died");
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("DIED");
    assertThat(held(talk, FieldId.RELEASE).confirmedRules()).containsExactly("release.cost");
    talk.say("disposition found dead");
    assertThat(talk.view().question()).as("the disposition says the same").isEmpty();
    assertThat(talk.field(FieldId.DISPOSITION)).isEqualTo("D");
    Talk other = talk().say("bird died").say("affirm").say("disposition wing injury");
    assertThat(other.view().question()).as("nor where more is told").isEmpty();
  }

  @Test
  void foundDeadIsAskedLikeADeathAndOneOfTheTwoIsEnough() {
    Talk talk = talk().say("disposition found dead");
    assertThat(talk.lastSpoken())
        .isEqualTo("the bird would be reported dead. keep disposition found dead");
    assertThat(talk.field(FieldId.DISPOSITION)).isEqualTo("-");
    talk.say("affirm");
    assertThat(talk.field(FieldId.DISPOSITION)).isEqualTo("D");
    talk.say("bird died");
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("DIED");
    Talk keyed = keyed(talk(), FieldId.DISPOSITION, "1");
    assertThat(keyed.view().question()).isPresent();
    assertThat(keyed.keys("\n").field(FieldId.DISPOSITION)).isEqualTo("D");
  }

  @Test
  void aBirdFoundDeadIsNotConcludedToBeReleased() {
    Talk talk = talk().say("after hatch year").say("sex unknown");
    talk.say("disposition found dead").say("affirm").say("save record");
    assertThat(talk.lastSpoken()).endsWith("missing remarks");
    talk.keys("Cold in the net\n").say("save record");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).code(FieldId.RELEASE)).contains("DIED");
    assertThat(talk.asSaved(1).entry(FieldId.RELEASE).orElseThrow().provenance().way())
        .isEqualTo(Provenance.Way.CONCLUDED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"released early", "escaped"})
  void aBirdFoundDeadThatIsSaidToHaveLeftIsAskedAbout(String words) {
    Talk talk = talk().say("disposition found dead").say("affirm").say(words);
    assertThat(talk.lastSpoken()).contains(words + " does not fit disposition found dead");
    assertThat(talk.say("bird died").lastSpoken()).isEqualTo("bird died. missing remarks");
    assertThat(talk.saved()).isZero();
    assertThat(talk.keys("Cold in the net\n").saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).code(FieldId.RELEASE)).contains("DIED");
  }

  @Test
  void anInjuryIsOnlyReadBack() {
    Talk talk = talk().say("disposition wing injury");
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.field(FieldId.DISPOSITION)).isEqualTo("W");
  }

  @Test
  void aCorrectionToADeathIsAskedAndOneFromItIsNot() {
    Talk talk = talk().say("released").say("amend earlier bird").say("affirm").say("bird died");
    assertThat(talk.lastSpoken()).isEqualTo(ASKED);
    talk.say("negative");
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("EARLY");
    talk.say("bird died").say("affirm");
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("DIED");
    talk.say("released early");
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.field(FieldId.RELEASE)).isEqualTo("EARLY");
  }

  @Test
  void aBirdThatIsNotBegunCannotDie() {
    Talk talk = talk().say("released").say("bird died");
    assertThat(talk.lastSpoken()).isEqualTo("no bird begun");
    assertThat(talk.view().question()).isEmpty();
  }
}
