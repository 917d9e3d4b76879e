package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Everything that speech can do, with one hand on a numeric keypad. */
class KeypadTest {

  private static Talk nuthatch() {
    return Talk.atFenwick().keys("284155601\n7270\n5\n4\n");
  }

  @ParameterizedTest
  @CsvSource({
    "02, Band number",
    "03, Old band number",
    "04, Species",
    "05, Age",
    "06, How aged",
    "07, Sex",
    "17, 'Wing chord, mm'",
    "21, 'Mass, g'"
  })
  void theMenuOpensEveryField(String choice, String asked) {
    assertThat(nuthatch().keys("+" + choice).view().asked()).isEqualTo(asked);
  }

  @ParameterizedTest
  @CsvSource({
    "02, 284155701, 2841-55701",
    "04, 6190, CEDW",
    "05, 6, ASY",
    "07, 5, F",
    "17, 91.5, 91.5",
    "21, 22.35, 22.35"
  })
  void everyFieldCanBeCorrected(String choice, String keys, String value) {
    Talk talk = nuthatch().keys("92\n22.3\n").keys("+" + choice + keys + "\n");
    FieldId field = Fenwick.form().fields().get(Integer.parseInt(choice) - 1).id();
    assertThat(talk.field(field)).isEqualTo(value);
  }

  @Test
  void minusTakesBackOneMoreEachTime() {
    Talk talk = nuthatch().keys("-");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("-");
    assertThat(talk.keys("-").field(FieldId.AGE)).isEqualTo("-");
  }

  @Test
  void minusFirstClearsTheKeysNotEntered() {
    Talk talk = nuthatch().keys("9-");
    assertThat(talk.view().big()).doesNotContain("9");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
  }

  @ParameterizedTest
  @ValueSource(strings = {"+", "*", "save record", "next field", "weight"})
  void keysNotEnteredAreNotLostByLeavingTheField(String leaving) {
    Talk talk = nuthatch().keys("92");
    talk = leaving.length() == 1 ? talk.keys(leaving) : talk.say(leaving);
    assertThat(talk.lastSpoken()).isEqualTo("not entered yet");
    assertThat(talk.view().message()).startsWith("92 is not entered yet");
    assertThat(talk.saved()).isZero();
    assertThat(talk.keys("\n").field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void enterAndMinusAnswerEveryQuestion() {
    assertThat(nuthatch().keys("29\n\n").field(FieldId.WING)).isEqualTo("29");
    assertThat(nuthatch().keys("29\n-").field(FieldId.WING)).isEqualTo("-");
    assertThat(nuthatch().keys("29\n92\n").field(FieldId.WING)).isEqualTo("92");
    assertThat(nuthatch().keys("+98\n").record()).isEmpty();
    assertThat(nuthatch().keys("+98-").record()).isPresent();
    assertThat(nuthatch().keys("+99\n").effects()).anyMatch(Effect.EndSession.class::isInstance);
    assertThat(nuthatch().keys("+99-").effects()).noneMatch(Effect.EndSession.class::isInstance);
  }

  @Test
  void theMenuErasesReadsBackAndSaves() {
    assertThat(nuthatch().keys("+07+-").field(FieldId.SEX)).isEqualTo("-");
    assertThat(nuthatch().keys("+*").lastSpoken())
        .isEqualTo(
            "band two eight four one five five six zero one. white breasted nuthatch. second year."
                + " male");
    assertThat(nuthatch().keys("++").saved()).isEqualTo(1);
  }

  @Test
  void theMenuClosesWithoutHarm() {
    for (String keys : new String[] {"+\n", "+.", "+A", "+1\n"}) {
      Talk talk = nuthatch();
      int before = talk.view().lines().hashCode();
      talk.keys(keys);
      assertThat(talk.view().lines().hashCode()).as(keys).isEqualTo(before);
      assertThat(talk.view().message()).as(keys).isEmpty();
      assertThat(talk.keys("92\n").field(FieldId.WING)).as(keys).isEqualTo("92");
    }
  }

  @Test
  void backspaceTakesAKeyBackAndClosesTheMenu() {
    Talk talk = nuthatch().keys("91");
    backspace(talk).keys("2\n");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    talk = nuthatch().keys("+");
    assertThat(backspace(talk).view().message()).isEmpty();
    assertThat(talk.keys("92\n").field(FieldId.WING)).isEqualTo("92");
  }

  private static Talk backspace(Talk talk) {
    return talk.event(new Event.KeyStruck(talk.now(), Key.of(Key.Name.BACKSPACE)));
  }

  @Test
  void starGoesOnAndSlashSaysAgain() {
    Talk talk = nuthatch().keys("*");
    assertThat(talk.view().asked()).isEqualTo("Mass, g");
    talk.spoken();
    assertThat(talk.keys("/").lastSpoken()).isEqualTo("mass");
  }

  @Test
  void lettersServeForCodesAlone() {
    assertThat(Talk.atFenwick().keys("*sosp\n").field(FieldId.SPECIES)).isEqualTo("SOSP");
    assertThat(nuthatch().keys("9x2\n").field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void saysWhatIsWrongWithKeysThatAreNoValue() {
    Talk talk = nuthatch().keys("9..2\n");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.view().message())
        .isEqualTo("Not taken: a number is digits, and a point where needed.");
    assertThat(Talk.atFenwick().keys("*9999\n").view().message())
        .isEqualTo("Not taken: 9999 is not in the list for species.");
  }

  /** Keys are no misses: whoever strikes them was told to use the keypad. */
  @Test
  void doesNotSendTheBanderWhoStrikesKeysToTheKeypad() {
    Talk talk = nuthatch().keys("29\n");
    for (int i = 0; i < 4; i++) {
      talk.keys("++");
      assertThat(talk.view().message()).startsWith("Not understood: ").doesNotContain("keypad");
    }
    assertThat(talk.keys("\n").field(FieldId.WING)).isEqualTo("29");
  }

  /** What is left where the only value was taken back and the program was then killed. */
  @Test
  void saysOfAnUnfinishedBirdWithoutValuesThatItHasNone() {
    var left = Talk.atFenwick().keys("*7270\n-").record();
    Talk talk = new Talk(Fenwick.setup(), Known.nothing());
    talk.event(new Event.Started(talk.now(), left));
    assertThat(talk.view().question())
        .contains(
            "An unfinished bird was found, without any value. Affirm carries it on, negative sets"
                + " it aside.");
  }

  /** A mass struck while a score is asked was refused as 203. */
  @Test
  void refusesAMeasureInAFieldOfCodesAsItWasStruck() {
    assertThat(nuthatch().keys("+0920.3\n").view().message())
        .isEqualTo("Not taken: 20.3 is not in the list for skull.");
    assertThat(nuthatch().keys("+05.5\n").view().message())
        .isEqualTo("Not taken: .5 is not in the list for age.");
    assertThat(nuthatch().keys("+061.\n").view().message())
        .isEqualTo("Not taken: a point wants a number on both sides.");
  }

  @Test
  void resumesOrSetsAsideTheBirdOfAnEarlierSession() {
    var left = nuthatch().record();
    Talk talk = new Talk(Fenwick.setup(), Known.nothing());
    talk.event(new Event.Started(talk.now(), left)).keys("\n");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    Talk other = new Talk(Fenwick.setup(), Known.nothing());
    other.event(new Event.Started(other.now(), left)).keys("-");
    assertThat(other.record()).isEqualTo(Optional.empty());
    assertThat(other.effects()).anyMatch(Effect.AbandonRecord.class::isInstance);
  }
}
