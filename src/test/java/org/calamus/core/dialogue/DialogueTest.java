package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.BandLedger;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DialogueTest {

  private static Talk withBand() {
    return Talk.atFenwick().say("two eight four one five five six zero one");
  }

  private static Talk nuthatch() {
    return withBand().say("white breasted nuthatch").say("second year").say("male");
  }

  @Test
  void takesAWholeBirdInGuidedOrder() {
    Talk talk = nuthatch().say("ninety two").say("two two point three");
    assertThat(talk.spoken())
        .containsExactly(
            "band",
            "band two eight four one five five six zero one. species",
            "white breasted nuthatch. age",
            "second year. sex",
            "male. wing",
            "wing nine two. mass",
            "mass two two point three. save record");
    talk.say("save record");
    assertThat(talk.lastSpoken()).isEqualTo("saved. next band six zero two");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.record()).isEmpty();
  }

  @Test
  void saysOnceThatWhatIsSaidIsKeptWhereItIs() {
    Talk talk = Talk.atFenwick();
    assertThat(talk.view().health()).noneMatch(h -> h.part() == Part.KEEPER);
    talk.event(new Event.PartUp(talk.now(), Part.KEEPER, "utterances/x"));
    assertThat(talk.view().message())
        .isEqualTo("What is said at the table is kept in the data folder, in utterances/x.");
    assertThat(talk.view().health()).anyMatch(h -> h.part() == Part.KEEPER && h.isUp());
    talk.say("two eight four one five five six zero one");
    assertThat(talk.view().message()).doesNotContain("kept");
  }

  @Test
  void goesOnWhereWhatIsSaidCanNoLongerBeKept() {
    Talk talk = Talk.atFenwick();
    talk.event(new Event.PartUp(talk.now(), Part.KEEPER, "utterances/x"));
    talk.event(new Event.PartDown(talk.now(), Part.KEEPER, "No longer kept."));
    assertThat(talk.view().health()).anyMatch(h -> h.isDown() && h.part() == Part.KEEPER);
    talk.say("two eight four one five five six zero one");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55601");
  }

  @Test
  void journalsAValueBeforeItIsSaid() {
    Talk talk = withBand();
    List<Effect> effects = talk.effects();
    int journalled = indexOf(effects, Effect.JournalValue.class);
    int said =
        effects.lastIndexOf(
            effects.stream()
                .filter(Effect.Say.class::isInstance)
                .skip(1)
                .findFirst()
                .orElseThrow());
    assertThat(journalled).isNotNegative().isLessThan(said);
  }

  private static int indexOf(List<Effect> effects, Class<? extends Effect> kind) {
    for (int i = 0; i < effects.size(); i++) {
      if (kind.isInstance(effects.get(i))) {
        return i;
      }
    }
    return -1;
  }

  @Test
  void saysSavedOnlyAfterTheStoreHasSaved() {
    Talk talk = nuthatch();
    talk.spoken();
    Dialogue dialogue = new Dialogue(Fenwick.setup());
    Step step =
        dialogue.step(
            talk.state(), new Event.Heard(talk.now(), Utterance.of("save record"), talk.now()));
    assertThat(step.effects()).hasSize(1).allMatch(Effect.SaveRecord.class::isInstance);
  }

  @Test
  void takesAValueByItsNameAtAnyTime() {
    Talk talk = withBand().say("wing ninety two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.lastSpoken()).isEqualTo("wing nine two. species");
  }

  @Test
  void takesSeveralNamedValuesInOneBreath() {
    Talk talk = nuthatch();
    talk.spoken();
    talk.say("wing ninety two weight two two point three");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(talk.spoken())
        .containsExactly("wing nine two. mass two two point three. save record");
  }

  @Test
  void takesCodesOfOtherFieldsWithoutTheirName() {
    Talk talk = withBand().say("white breasted nuthatch second year male");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("WBNU");
    assertThat(talk.field(FieldId.AGE)).isEqualTo("SY");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
  }

  @Test
  void correctsTheLastValueInOneTurn() {
    Talk talk = nuthatch().say("ninety three").say("correction nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.lastSpoken()).isEqualTo("wing nine two, was nine three. mass");
  }

  @Test
  void correctsANamedFieldInOneTurn() {
    Talk talk = nuthatch().say("ninety two").say("correction sex female");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("F");
    assertThat(talk.view().asked()).isEqualTo("Mass, g");
  }

  @Test
  void takesBackOneMoreEachTimeCorrectionIsSaid() {
    Talk talk = nuthatch().say("correction");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("-");
    assertThat(talk.lastSpoken()).isEqualTo("sex taken back. sex");
    talk.say("correction");
    assertThat(talk.field(FieldId.AGE)).isEqualTo("-");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("WBNU");
  }

  @Test
  void takingBackACorrectionBringsTheFormerValueBack() {
    Talk talk = nuthatch().say("ninety three").say("correction nine two").say("correction");
    assertThat(talk.field(FieldId.WING)).isEqualTo("93");
  }

  @Test
  void asksWhenAWingDoesNotFitTheSpeciesAndKeepsItOnlyWhenAffirmed() {
    Talk talk = nuthatch().say("two nine");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.lastSpoken())
        .isEqualTo("wing two nine is small. perhaps nine two. keep wing two nine");
    assertThat(talk.view().mode()).isIn(View.Mode.CHECK);
    assertThat(talk.view().question().orElseThrow())
        .contains("29 mm", "77 to 100 mm", "White-breasted Nuthatch", "92 would fit");
    talk.say("affirm");
    assertThat(talk.field(FieldId.WING)).isEqualTo("29");
    assertThat(talk.record().orElseThrow().entry(FieldId.WING).orElseThrow().confirmedRules())
        .containsExactly("wing.species");
  }

  @Test
  void dropsTheQuestionedValueWhenNegated() {
    Talk talk = nuthatch().say("two nine").say("negative");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.view().asked()).isEqualTo("Wing chord, mm");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void takesANewValueInPlaceOfTheQuestionedOne() {
    assertThat(nuthatch().say("two nine").say("nine two").field(FieldId.WING)).isEqualTo("92");
    assertThat(nuthatch().say("two nine").say("negative nine two").field(FieldId.WING))
        .isEqualTo("92");
    assertThat(nuthatch().say("two nine").keys("92\n").field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void refusesAValueNoBirdHas() {
    Talk talk = nuthatch().say("nine");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.view().message()).contains("Wing chord 9 mm is refused", "25 to 400 mm");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void fillsAWholeRecordByTheKeypadAlone() {
    Talk talk = Talk.atFenwick().keys("284155601\n7270\n5\n4\n92\n22.3\n\n");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.view().recent().get(0))
        .isEqualTo("band 2841-55601  species WBNU  age SY  sex M  wing 92 mm  mass 22.3 g");
  }

  @Test
  void takesTheLastDigitsOfTheNextBand() {
    Talk talk = Talk.atFenwick().keys("284155601\n7270\n5\n4\n*\n++");
    talk.spoken();
    assertThat(talk.say("six zero two").field(FieldId.BAND)).isEqualTo("2841-55602");
  }

  @Test
  void asksWhenABandIsNotTheNextOfItsString() {
    Known known =
        new Known(BandLedger.empty().withUsed(new BandNumber("2841", "55609")), Captures.none());
    Talk talk = new Talk(Fenwick.setup(), known).say("six zero one");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.lastSpoken())
        .isEqualTo(
            "band six zero one comes before six zero nine, the first used."
                + " keep band two eight four one five five six zero one");
  }

  @Test
  void refusesABandThatIsOnABirdAlready() {
    Known known =
        new Known(BandLedger.empty().withUsed(new BandNumber("2841", "55601")), Captures.none());
    Talk talk = new Talk(Fenwick.setup(), known).keys("284155601\n");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("-");
    assertThat(talk.view().message()).contains("already on a bird");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void neverTakesALoneTenThatCouldBeATeen() {
    Talk talk = withBand().say("song sparrow").keys("1\n").say("unknown");
    talk.spoken();
    // both 15 and 50 are possible wing chords of no bird here: 15 is refused, 50 is doubted
    talk.say("fifty");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    // 60 fits a song sparrow, 16 does not: no doubt what was said
    talk.say("sixty");
    assertThat(talk.field(FieldId.WING)).isEqualTo("60");
  }

  @Test
  void asksForDigitsWhereTeenAndTenBothFit() {
    Talk talk = withBand().keys("4980\n1\n5\n").say("wing nine eight");
    talk.spoken();
    talk.say("thirty"); // a female red-winged blackbird may weigh 30 g, not 13 g
    assertThat(talk.field(FieldId.MASS)).isEqualTo("30");
  }

  @Test
  void takesNothingOfAnUtteranceWithAnUnknownWord() {
    Talk talk = nuthatch();
    talk.spoken();
    talk.event(
        new Event.Heard(
            talk.now(), Utterance.of(List.of(Word.of("nine"), Word.of(Word.UNKNOWN))), talk.now()));
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.lastSpoken()).isEqualTo("again");
    assertThat(talk.view().message()).isEqualTo("Not understood: again. Heard: \"nine ...\"");
  }

  @Test
  void staysSilentWhenOnlyChatterIsHeard() {
    Talk talk = nuthatch();
    talk.spoken();
    talk.event(
        new Event.Heard(talk.now(), Utterance.of(List.of(Word.of(Word.UNKNOWN))), talk.now()));
    talk.say("little bird");
    assertThat(talk.spoken()).isEmpty();
  }

  /** As the measurement's voices were heard when they talked of other things. */
  @ParameterizedTest
  @CsvSource({
    "is headed allen's hummingbird nets bunting varied is, 3000, true",
    "what kind [unk] hours eighty one no, 3100, true",
    "carolina hatch year abandon, 1900, false",
    "six three eight four field two six three nine, 2600, false",
    "no [unk], 700, false"
  })
  void onlyTheToneAnswersLongTalkOfOtherThings(String words, int millis, boolean isTalk) {
    Talk talk = nuthatch();
    talk.spoken();
    Utterance heard = Utterance.of(words);
    talk.event(
        new Event.Heard(
            talk.now(),
            new Utterance(heard.words(), -20, Duration.ofMillis(millis), 30),
            talk.now()));
    assertThat(talk.effects()).contains(new Effect.Sound(Tone.NOT_UNDERSTOOD));
    assertThat(talk.spoken().isEmpty()).isEqualTo(isTalk);
    assertThat(talk.view().message()).contains("Heard: \"" + words.replace("[unk]", "...") + "\"");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
  }

  @Test
  void takesNothingHeardWithLowConfidence() {
    Talk talk = nuthatch();
    talk.event(
        new Event.Heard(
            talk.now(),
            Utterance.of(List.of(new Word("nine", 1, 0, 1), new Word("two", 0.4, 1, 2))),
            talk.now()));
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
  }

  @Test
  void asksForTheKeypadAtTheThirdMiss() {
    Talk talk = nuthatch().say("nine nine nine nine nine").say("point").say("point point");
    assertThat(talk.lastSpoken()).isEqualTo("use the keypad for wing");
  }

  @Test
  void abandonsOnlyWhenAffirmed() {
    Talk talk = nuthatch().say("abandon record").say("negative");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    talk.say("abandon record").say("affirm");
    assertThat(talk.record()).isEmpty();
    assertThat(talk.effects()).anyMatch(Effect.AbandonRecord.class::isInstance);
  }

  @Test
  void doesNotSaveWhileSomethingRequiredIsMissing() {
    Talk talk = withBand().say("save record");
    assertThat(talk.saved()).isZero();
    assertThat(talk.lastSpoken()).isEqualTo("missing species, age, sex");
  }

  @Test
  void offersTheUnfinishedBirdOfAnEarlierSession() {
    CaptureRecord left = nuthatch().record().orElseThrow();
    Talk talk = new Talk(Fenwick.setup(), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.of(left)));
    assertThat(talk.lastSpoken()).isEqualTo("unfinished bird. carry on");
    talk.say("affirm");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.view().asked()).isEqualTo("Wing chord, mm");
  }

  @Test
  void erasesANamedFieldAndCanTakeThatBack() {
    Talk talk = nuthatch().say("erase age");
    assertThat(talk.field(FieldId.AGE)).isEqualTo("-");
    assertThat(talk.say("correction").field(FieldId.AGE)).isEqualTo("SY");
  }

  @Test
  void keepsTheWayInWithTheValue() {
    Talk talk = nuthatch().keys("92\n");
    assertThat(talk.record().orElseThrow().entry(FieldId.SEX).orElseThrow().provenance())
        .isEqualTo(new Provenance(Provenance.Way.SAID, "male"));
    assertThat(talk.record().orElseThrow().entry(FieldId.WING).orElseThrow().provenance())
        .isEqualTo(new Provenance(Provenance.Way.KEYED, "92"));
  }

  @Test
  void anyKeyCutsTheVoiceOff() {
    Talk talk = withBand();
    talk.event(new Event.VoiceBegan(talk.now()));
    talk.spoken();
    talk.keys("7");
    assertThat(talk.effects()).anyMatch(Effect.Hush.class::isInstance);
  }

  @Test
  void handlesEveryKindOfEvent() {
    assertThat(Event.class.getPermittedSubclasses()).hasSize(19);
  }
}
