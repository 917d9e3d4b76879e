package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.rule.BandFate;
import org.calamus.core.rule.Known;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CorrectingTest {

  /** Two nuthatches are saved, with the bands ending in 601 and 602. */
  private static Talk afterTwoBirds() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    talk.event(new Event.Started(talk.now(), Optional.empty()));
    bird(talk, "two eight four one five five six zero one", "nine one");
    bird(talk, "six zero two", "nine two");
    assertThat(talk.saved()).isEqualTo(2);
    talk.spoken();
    return talk;
  }

  private static void bird(Talk talk, String band, String wing) {
    talk.say(band)
        .say("white breasted nuthatch second year male")
        .say(wing)
        .say("two two point three")
        .say("save record");
  }

  private static BandNumber band(String text) {
    return BandNumber.parse(text).orElseThrow();
  }

  private static Optional<BandFate> fate(Talk talk, String band) {
    return talk.state().known().ledger().fateOf(band(band));
  }

  private static Effect.AmendRecord amended(Talk talk) {
    return talk.effects().stream()
        .filter(Effect.AmendRecord.class::isInstance)
        .map(Effect.AmendRecord.class::cast)
        .reduce((one, next) -> next)
        .orElseThrow();
  }

  private static void assertAsBefore(Talk talk) {
    assertThat(talk.record()).isEmpty();
    assertThat(talk.view().correcting()).isEmpty();
    assertThat(talk.effects()).noneMatch(Effect.AmendRecord.class::isInstance);
  }

  @Test
  void ofSeveralRecordsOfABandTheDateIsSaidAndShown() {
    Talk talk = Talk.atFenwick().keys("284155601\n7270\n5\n4\n92\n22.3\n\n");
    talk.keys("+81\n");
    assertThat(talk.view().message())
        .isEqualTo("Correcting 2841-55601 of 2026-06-13: name a field and give it; then save.");
    talk.say("abandon record").say("affirm");
    talk.event(new Event.Ticked(talk.now().plus(java.time.Duration.ofDays(20))));
    talk.keys("284155601\n7270\n5\n4\n92\n22.5\n\n");
    talk.keys("+81").keys("601\n");
    assertThat(talk.view().message())
        .startsWith("Correcting 2841-55601 of 2026-07-03, the newest of 2 with this band: ");
    assertThat(talk.lastSpoken())
        .isEqualTo("correcting band six zero one of july three two zero two six. which field");
  }

  @Test
  void wordsOpenTheLastRecordCorrectAndSaveItWithItsReason() {
    Talk talk = afterTwoBirds().say("amend earlier bird");
    assertThat(talk.lastSpoken())
        .isEqualTo("amend band six zero two. affirm, or last digits of the band");
    talk.say("affirm");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55602");
    assertThat(talk.lastSpoken()).isEqualTo("correcting band six zero two. which field");
    talk.say("wing nine three");
    assertThat(talk.lastSpoken()).isEqualTo("wing nine three, was nine two. save record");
    assertThat(talk.view().lines())
        .extracting(View.Line::value)
        .contains("93 mm, was 92 mm", "22.3 g");
    talk.say("save record");
    assertThat(talk.lastSpoken()).isEqualTo("say the reason, or its number");
    talk.say("misheard");
    assertThat(amended(talk).why())
        .isEqualTo(new Amendment.Why(Amendment.Reason.MISHEARD, Optional.empty(), "QX"));
    assertThat(talk.lastSpoken()).isEqualTo("correction saved. band six zero two");
    assertThat(talk.asSaved(2).value(FieldId.WING)).map(v -> v.text()).contains("93");
    assertThat(talk.view().correcting()).isEmpty();
    assertThat(talk.saved()).as("no more birds than before").isEqualTo(2);
    assertThat(talk.view().recent().get(0)).startsWith("corrected  ").contains("93");
  }

  @Test
  void keysOpenTheRecordOfABandCorrectAndSaveIt() {
    Talk talk = afterTwoBirds().keys("+81601\n");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55601");
    talk.keys("+17").keys("95\n").keys("\n");
    assertThat(talk.view().asked()).isEqualTo("Why was it wrong?");
    assertThat(talk.view().choices())
        .extracting(View.Choice::text)
        .containsExactly(
            "misheard",
            "typing error",
            "reading error",
            "wrong field",
            "identified anew",
            "something else");
    talk.keys("2\n");
    assertThat(amended(talk).why().reason()).isEqualTo(Amendment.Reason.MISKEYED);
    assertThat(talk.asSaved(1).value(FieldId.WING)).map(v -> v.text()).contains("95");
  }

  @Test
  void enterAloneOpensTheLastRecord() {
    assertThat(afterTwoBirds().keys("+81\n").view().correcting())
        .isEqualTo("correcting 2841-55602");
  }

  @ParameterizedTest
  @CsvSource({
    "amend earlier bird six zero one",
    "amend earlier bird two eight four one five five six zero one"
  })
  void digitsInOneBreathOpenTheRecordOfTheBand(String words) {
    assertThat(afterTwoBirds().say(words).view().correcting()).isEqualTo("correcting 2841-55601");
  }

  @Test
  void digitsBehindTheQuestionOpenTheRecordOfTheBand() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("six zero one");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55601");
  }

  @Test
  void aBandThatNobodySavedOrSeveralAreToldAndOpenNothing() {
    Talk talk = afterTwoBirds().keys("+81777\n");
    assertThat(talk.lastSpoken()).isEqualTo("no saved band ends seven seven seven");
    assertThat(talk.view().message()).isEqualTo("No saved band ends in 777.");
    assertAsBefore(talk);
    talk.say("negative");
    bird(talk, "two eight four one five six six zero one", "nine one");
    talk.say("affirm").say("save record").spoken();
    talk.keys("+81601\n");
    assertThat(talk.view().message())
        .isEqualTo("2 saved bands end in 601: give more of its digits.");
    talk.keys("55601\n");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55601");
  }

  @Test
  void withABirdInTheHandNoRecordIsOpened() {
    Talk talk = afterTwoBirds().say("six zero three").say("amend earlier bird");
    assertThat(talk.lastSpoken()).isEqualTo("bird in hand. save it first");
    assertThat(talk.view().message())
        .isEqualTo("A bird is in the hand: save its record first, then correct the other.");
    assertThat(talk.view().correcting()).isEmpty();
    assertThat(talk.record().orElseThrow().id()).isEqualTo(3);
  }

  @Test
  void theNumberOfARecordOpensItForThePages() {
    Talk talk = afterTwoBirds();
    Step step = new Correcting(Fenwick.setup()).reopen(talk.state(), 1);
    assertThat(step.effects()).contains(new Effect.ReadSaved(1));
    talk.event(new Event.SavedRead(talk.now(), 1, Optional.of(talk.asSaved(1))));
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55601");
  }

  @Test
  void aRecordThatTheStoreDoesNotHaveOrCannotReadIsToldInASentence() {
    Talk talk = afterTwoBirds();
    talk.event(new Event.SavedRead(talk.now(), 77, Optional.empty()));
    assertThat(talk.view().message()).isEqualTo("Record 77 is not among the saved ones.");
    talk.event(new Event.ReadFailed(talk.now(), "Record 1 cannot be read: the disk failed."));
    assertThat(talk.view().message()).isEqualTo("Record 1 cannot be read: the disk failed.");
    assertThat(talk.lastSpoken()).isEqualTo("record not read. look at the screen");
    assertAsBefore(talk);
  }

  @Test
  void givenUpTheRecordAndWhatIsKnownStayAsTheyWere() {
    Talk talk = afterTwoBirds();
    Known before = talk.state().known();
    CaptureRecord saved = talk.asSaved(2);
    talk.say("amend earlier bird").say("affirm").say("wing nine three").say("abandon record");
    assertThat(talk.view().question())
        .contains("Give this correction up? The record stays as it was saved.");
    talk.say("affirm");
    assertThat(talk.effects()).contains(new Effect.WithdrawCorrection(2, talk.now()));
    assertAsBefore(talk);
    assertThat(talk.asSaved(2)).isEqualTo(saved);
    assertThat(talk.state().known()).isEqualTo(before);
    assertThat(talk.view().message())
        .isEqualTo("Correction given up: 2841-55602 stays as it was saved.");
  }

  @Test
  void savingWithoutAChangeClosesTheRecordAndAsksNothing() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm").say("save record");
    assertAsBefore(talk);
    assertThat(talk.lastSpoken()).isEqualTo("nothing changed. band");
  }

  @Test
  void aReleasedBirdsRecordIsNotSavedByItself() {
    Talk talk = afterTwoBirds().say("amend earlier bird six zero one").say("wing nine three");
    assertThat(talk.asSaved(1).value(FieldId.WING)).map(v -> v.text()).contains("91");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55601");
  }

  @Test
  void theRulesDoubtACorrectedValueLikeAnyOther() {
    Talk talk = afterTwoBirds().say("amend earlier bird six zero one").say("wing two nine");
    assertThat(talk.view().question()).isPresent();
    talk.say("negative");
    assertThat(talk.field(FieldId.WING)).isEqualTo("91");
    talk.say("wing two nine").say("affirm").say("save record").say("misheard");
    assertThat(talk.asSaved(1).entry(FieldId.WING).orElseThrow().isConfirmedDoubt()).isTrue();
  }

  @Test
  void aCorrectionIsTakenBackToWhatWasSaved() {
    Talk talk = afterTwoBirds().say("amend earlier bird six zero one").say("wing nine three");
    talk.say("correction");
    assertThat(talk.field(FieldId.WING)).isEqualTo("91");
    assertThat(talk.record().orElseThrow()).isEqualTo(talk.asSaved(1));
  }

  @Test
  void anErasedValueIsEmptyInTheCorrectedRecord() {
    Talk talk = afterTwoBirds().say("amend earlier bird six zero one").say("erase wing");
    talk.say("save record").say("wrong field");
    assertThat(talk.asSaved(1).entry(FieldId.WING)).isEmpty();
    assertThat(amended(talk).why().reason()).isEqualTo(Amendment.Reason.WRONG_FIELD);
  }

  @Test
  void aScaleFillsTheMassOnlyWhereItIsAsked() {
    Talk talk = afterTwoBirds().say("amend earlier bird six zero one");
    talk.weigh("0.0", "19.5", "19.5", "0.0");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    talk.say("mass").weigh("0.0", "21.5", "21.5");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("21.5");
  }

  @Test
  void noBirdIsInTheHandMeanwhile() {
    Talk talk = afterTwoBirds().say("amend earlier bird six zero one");
    talk.event(new Event.Ticked(talk.now().plus(Duration.ofHours(3))));
    assertThat(talk.view().inHand()).isEmpty();
    assertThat(talk.view().hold()).isEqualTo(View.Hold.WITHIN);
  }

  @Test
  void aBandThatTheRecordNoLongerHasIsOnItsStringAgain() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm");
    talk.say("band two eight four one five five six zero three");
    assertThat(talk.view().question().orElse("")).contains("2841-55602 is not accounted for");
    talk.say("out of order").say("save record").say("misread").say("reading error");
    assertThat(fate(talk, "284155603")).contains(BandFate.USED);
    assertThat(fate(talk, "284155602")).isEmpty();
    assertThat(talk.state().known().ledger().expected()).contains(band("284155602"));
    assertThat(talk.view().message())
        .isEqualTo("Correction of 2841-55603 saved. 2841-55602 is on its string again.");
    assertThat(talk.state().known().birds(band("284155602"))).isEmpty();
    assertThat(talk.state().known().birds(band("284155603"))).hasSize(1);
  }

  @Test
  void aBandLeftOverIsCalledLostTogetherWithTheCorrectionAndNotBefore() {
    Talk talk = afterTwoBirds();
    Known before = talk.state().known();
    talk.say("amend earlier bird").say("affirm");
    talk.say("band two eight four one five five six zero three").say("band lost");
    assertThat(talk.effects()).noneMatch(Effect.AccountFor.class::isInstance);
    talk.say("abandon record").say("affirm");
    assertThat(talk.state().known()).isEqualTo(before);
    talk.say("amend earlier bird").say("affirm");
    talk.say("band two eight four one five five six zero three").say("band lost");
    talk.say("save record").say("misheard");
    assertThat(amended(talk).accounts())
        .extracting(r -> r.band().orElseThrow().text() + " " + r.kind())
        .containsExactly("2841-55602 LOST");
    assertThat(fate(talk, "284155602")).contains(BandFate.LOST);
    assertThat(fate(talk, "284155603")).contains(BandFate.USED);
  }

  @Test
  void theBandOfAnotherBirdIsRefused() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm");
    talk.say("band two eight four one five five six zero one");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55602");
    assertThat(talk.view().message()).contains("2841-55601");
    talk.say("save record");
    assertAsBefore(talk);
  }

  @Test
  void noBandIsProposedMeanwhile() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm").say("band number");
    assertThat(talk.lastSpoken()).isEqualTo("band, now six zero two");
    assertThat(talk.view().nextBand()).isEmpty();
    talk.say("abandon record").say("affirm");
    assertThat(talk.view().nextBand()).isEqualTo("2841-55603");
  }

  @Test
  void itsOwnBandIsTakenAgain() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm");
    talk.say("band two eight four one five five six zero two");
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55602");
  }

  @Test
  void whatIsKnownFollowsTheCorrectedValues() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm");
    talk.say("wing nine three").say("save record").say("misheard");
    PastCapture capture = talk.state().known().captures().ofRecord(2).orElseThrow();
    assertThat(capture.amount(FieldId.WING)).map(a -> a.toPlainString()).contains("93");
    assertThat(talk.state().known().ledger().expected()).contains(band("284155603"));
    List<PastCapture> all = talk.state().known().captures().all();
    Known anew = Known.of(List.of(), all, Fenwick.ZONE);
    assertThat(talk.state().known().ledger()).isEqualTo(anew.ledger());
    assertThat(talk.state().known().sample()).isEqualTo(anew.sample());
  }

  @Test
  void anotherReasonIsToldInAMemoWhichStandsWithTheCorrection() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm").say("wing nine three");
    talk.say("save record").say("something else");
    Effect.RecordMemo memo =
        talk.effects().stream()
            .filter(Effect.RecordMemo.class::isInstance)
            .map(Effect.RecordMemo.class::cast)
            .findFirst()
            .orElseThrow();
    assertThat(memo.name()).matches("2-9\\d{6}\\.wav");
    talk.event(new Event.MemoRecorded(talk.now(), memo.name(), Duration.ofSeconds(4)));
    assertThat(amended(talk).why().memo()).contains(memo.name());
    assertThat(talk.asSaved(2).entry(FieldId.NOTE)).isEmpty();
  }

  @Test
  void aMemoThatFailsDoesNotLoseTheCorrection() {
    Talk talk = afterTwoBirds().keys("+81\n+1793\n");
    talk.keys("\n").keys("6\n");
    talk.event(new Event.MemoFailed(talk.now(), "No memo: there is no microphone."));
    assertThat(amended(talk).why())
        .isEqualTo(new Amendment.Why(Amendment.Reason.OTHER, Optional.empty(), "QX"));
    assertThat(talk.record()).isEmpty();
  }

  @Test
  void negativeToTheReasonGoesBackToTheCorrection() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm").say("wing nine three");
    talk.say("save record").say("negative");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55602");
    assertThat(talk.field(FieldId.WING)).isEqualTo("93");
  }

  @Test
  void reasonsAreListenedForOnlyWhenOneIsAsked() {
    Talk talk = afterTwoBirds();
    Dialogue dialogue = new Dialogue(Fenwick.setup());
    assertThat(dialogue.grammar(talk.state()).phrases()).doesNotContain("typing error");
    talk.say("amend earlier bird").say("affirm").say("wing nine three").say("save record");
    assertThat(dialogue.grammar(talk.state()).phrases())
        .contains("typing error", "something else", "negative")
        .doesNotContain("white breasted nuthatch");
  }

  @Test
  void whereTheStoreFailsTheCorrectionStaysOpenAndIsSavedLater() {
    Talk talk = afterTwoBirds().say("amend earlier bird").say("affirm").say("wing nine three");
    State open = talk.state();
    Dialogue dialogue = new Dialogue(Fenwick.setup());
    State asked = dialogue.step(open, heard(talk, "save record")).state();
    Step commit = dialogue.step(asked, heard(talk, "misheard"));
    assertThat(commit.effects()).anyMatch(Effect.AmendRecord.class::isInstance);
    Event failed = new Event.StoreFailed(talk.now(), "The disk is full; make room.");
    State after = dialogue.step(commit.state(), failed).state();
    assertThat(after.isCorrecting()).isTrue();
    assertThat(after.face().message())
        .isEqualTo(
            "Not stored yet. Go on: the values are kept here and stored as soon as that works."
                + " Affirm, or Enter, saves again.");
    State again = dialogue.step(after, heard(talk, "affirm")).state();
    assertThat(again.question()).containsInstanceOf(Question.Reason.class);
  }

  private static Event heard(Talk talk, String words) {
    return new Event.Heard(talk.now(), org.calamus.core.speech.Utterance.of(words), talk.now());
  }

  @Test
  void aCorrectionLeftByAnEarlierSessionIsOfferedAndCarriedOn() {
    Talk before = afterTwoBirds();
    before.say("amend earlier bird").say("affirm").say("wing nine three");
    Talk talk = restarted(before);
    assertThat(talk.lastSpoken()).isEqualTo("unfinished correction. carry on");
    assertThat(talk.view().question().orElseThrow())
        .startsWith("An unfinished correction of 2841-55602 was found.");
    talk.say("affirm");
    assertThat(talk.view().correcting()).isEqualTo("correcting 2841-55602");
    assertThat(talk.view().lines()).extracting(View.Line::value).contains("93 mm, was 92 mm");
    talk.say("correction");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    talk.say("wing nine four").say("save record").say("misheard");
    assertThat(talk.asSaved(2).value(FieldId.WING)).map(v -> v.text()).contains("94");
  }

  @Test
  void aCorrectionLeftByAnEarlierSessionIsDroppedAndTheRecordStays() {
    Talk before = afterTwoBirds();
    before.say("amend earlier bird").say("affirm").say("wing nine three");
    Talk talk = restarted(before).say("negative");
    assertThat(talk.effects()).contains(new Effect.WithdrawCorrection(2, talk.now()));
    assertThat(talk.effects()).noneMatch(Effect.AbandonRecord.class::isInstance);
    assertThat(talk.lastSpoken()).isEqualTo("given up. band");
  }

  private static Talk restarted(Talk before) {
    List<PastCapture> saved =
        List.of(PastCapture.of(before.asSaved(1)), PastCapture.of(before.asSaved(2)));
    Talk talk = new Talk(Fenwick.setup(), Known.of(List.of(), saved, Fenwick.ZONE));
    return talk.event(
        new Event.Started(talk.now(), before.record(), Optional.of(before.asSaved(2))));
  }

  @Test
  void aSightingLaterThanTheRecordDoesNotRefuseTheBandThatWasPutOn() {
    Talk talk = afterTwoBirds();
    talk.say("recapture").say("two eight four one five five seven zero seven");
    for (int i = 0; i < 3 && talk.state().question().isPresent(); i++) {
      talk.say("affirm");
    }
    talk.say("white breasted nuthatch second year male").say("save record");
    for (int i = 0; i < 3 && talk.state().question().isPresent(); i++) {
      talk.say("affirm");
    }
    assertThat(fate(talk, "284155707")).contains(BandFate.USED);
    talk.keys("+81602\n").say("band two eight four one five five seven zero seven");
    assertThat(talk.view().question().orElse("")).contains("not the first of its string");
    talk.say("affirm");
    assertThat(talk.field(FieldId.BAND)).isEqualTo("2841-55707");
  }
}
