package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is asked about a value depends on what it would cost to have it wrong. */
class DoubtsTest {

  private static Talk withBalance() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    return talk.event(new Event.Started(talk.now(), Optional.empty()));
  }

  private static Talk wholeForm() {
    return WholeRecord.talk().say("white breasted nuthatch");
  }

  private static List<String> confirmed(Talk talk, FieldId field) {
    return talk.record().flatMap(r -> r.entry(field)).map(Entry::confirmedRules).orElse(List.of());
  }

  /** A wing that fits neither the species given later nor anything else. */
  private static Talk conflict() {
    return Talk.atFenwick()
        .say("two eight four one five five six zero one")
        .say("wing nine two")
        .say("song sparrow");
  }

  @Test
  void aConflictOfTwoFieldsNamesBoth() {
    Talk talk = conflict();
    assertThat(talk.lastSpoken()).startsWith("wing nine two").endsWith("keep both");
    assertThat(talk.view().question().orElseThrow()).contains("Wing chord", "Keep both?");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("-");
  }

  @Test
  void theAnswerStandsWithTheFieldThatIsDoubted() {
    Talk talk = conflict().say("affirm").say("affirm");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("SOSP");
    assertThat(confirmed(talk, FieldId.WING)).contains("wing.species");
    assertThat(confirmed(talk, FieldId.SPECIES)).isEmpty();
    talk.say("correction");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("-");
    assertThat(confirmed(talk, FieldId.WING)).as("taken back with it").isEmpty();
  }

  @Test
  void aValueThatWasKeptIsNotAskedAboutAgain() {
    Talk talk = wholeForm().say("wing two nine").say("affirm");
    List<String> kept = confirmed(talk, FieldId.WING);
    assertThat(kept).isNotEmpty();
    talk.say("wing two nine");
    assertThat(talk.view().question()).isEmpty();
    assertThat(confirmed(talk, FieldId.WING)).isEqualTo(kept);
    talk.say("wing three zero");
    assertThat(talk.view().question()).as("another value is").isPresent();
  }

  @Test
  void negativeDropsTheValueJustGiven() {
    Talk talk = conflict().say("negative");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("-");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.view().asked()).isEqualTo("Species");
  }

  @Test
  void theOtherFieldGivenAnewSettlesIt() {
    Talk talk = conflict().say("wing six six");
    assertThat(talk.field(FieldId.WING)).isEqualTo("66");
    assertThat(talk.field(FieldId.SPECIES)).isEqualTo("SOSP");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void evidenceThatIsNamedIsAskedAtOnce() {
    Talk talk = wholeForm().say("six zero one").say("hatching year").say("how aged skull");
    assertThat(talk.lastSpoken()).endsWith("skull");
    assertThat(talk.view().asked()).isEqualTo("Skull");
    talk.say("two");
    assertThat(talk.field(FieldId.SKULL)).isEqualTo("2");
    assertThat(talk.view().asked()).as("and goes on where it was").isEqualTo("Sex");
  }

  @Test
  void evidencePassedByIsAskedForInsteadOfTheValueDropped() {
    Talk talk = wholeForm().say("six zero one").say("hatching year").say("how aged skull");
    talk.say("next field").say("fat two");
    assertThat(talk.lastSpoken()).endsWith("go on without");
    Talk other = wholeForm().say("six zero one").say("hatching year").say("how aged skull");
    other.say("next field").say("fat two").say("negative");
    assertThat(other.field(FieldId.FAT)).isEqualTo("2");
    assertThat(other.view().asked()).isEqualTo("Skull");
    talk.say("affirm");
    assertThat(talk.field(FieldId.FAT)).isEqualTo("2");
    assertThat(confirmed(talk, FieldId.HOW_AGED)).containsExactly("how-aged.skull");
    assertThat(confirmed(talk, FieldId.FAT)).isEmpty();
  }

  /** How the bird was aged names the skull, which was then gone past. */
  private static Talk withoutSkull() {
    return wholeForm()
        .say("six zero one")
        .say("hatching year")
        .say("how aged skull")
        .say("next field");
  }

  @Test
  void aValueIsNotHeldBackByADoubtAboutOtherEvidence() {
    Talk talk = withoutSkull().say("wing nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.lastSpoken())
        .isEqualTo("wing nine two. how aged skull, but skull is empty. go on without");
    assertThat(talk.view().question().orElseThrow())
        .endsWith("Go on without? Negative asks for Skull.");
    assertThat(talk.view().asked()).as("what is struck goes on").isEqualTo("Fat");
  }

  @Test
  void whoeverGoesOnLosesNothing() {
    Talk talk = withoutSkull().say("wing nine two").keys("2\n");
    assertThat(talk.field(FieldId.FAT)).isEqualTo("2");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    talk.say("sex male").say("next field").say("net twelve");
    assertThat(talk.field(FieldId.SEX)).isEqualTo("M");
    assertThat(talk.field(FieldId.NET)).isEqualTo("12");
    assertThat(talk.view().question()).as("asked until it is answered").isPresent();
    assertThat(talk.say("skull two").view().question()).isEmpty();
    assertThat(talk.field(FieldId.SKULL)).isEqualTo("2");
  }

  @Test
  void aQuestionAboutEvidenceIsAnsweredBeforeSaving() {
    Talk talk = withoutSkull().say("male").say("wing nine two");
    assertThat(talk.say("save record").lastSpoken()).endsWith("answer affirm or negative first");
    talk.say("affirm").say("save record");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).entry(FieldId.HOW_AGED).orElseThrow().confirmedRules())
        .containsExactly("how-aged.skull");
  }

  @Test
  void theValueBehindWhichEvidenceIsAskedForIsCorrectedAndTakenBack() {
    Talk talk = withoutSkull().say("wing nine two").say("correction nine five");
    assertThat(talk.field(FieldId.WING)).isEqualTo("95");
    assertThat(talk.view().question()).isPresent();
    talk.say("correction");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void whatIsNotUnderstoodLeavesTheQuestionAboutEvidenceOpen() {
    Talk talk = withoutSkull().say("wing nine two").say("point point");
    assertThat(talk.view().question()).isPresent();
    assertThat(talk.say("weight point point").view().question()).isPresent();
  }

  @Test
  void theBirdGoesThoughEvidenceIsAskedFor() {
    Talk talk = withoutSkull().say("wing nine two").keys("+/");
    assertThat(talk.saved()).isEqualTo(1);
    assertThat(talk.asSaved(1).value(FieldId.WING)).isPresent();
  }

  @Test
  void aMassThatSettlesIsTakenThoughEvidenceIsAskedFor() {
    Talk talk = withBalance().say("two eight four one five five six zero one");
    talk.say("white breasted nuthatch").say("how aged skull").say("next field");
    talk.say("wing nine two");
    talk.weigh("0.0", "22.3", "22.3", "22.3", "22.3", "22.3", "22.3", "22.3");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
  }

  @Test
  void aMassWeighedBeforeTheBirdIsAskedAboutWithItsFirstValue() {
    Talk talk = withBalance().weigh("0.0", "22.3", "22.3");
    assertThat(talk.view().message()).contains("22.3 g waits for a bird");
    assertThat(talk.record()).isEmpty();
    talk.say("two eight four one five five six zero one");
    assertThat(talk.lastSpoken()).endsWith("keep mass two two point three");
    assertThat(talk.view().question().orElseThrow()).contains("the bird before");
    talk.say("affirm");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("22.3");
    assertThat(confirmed(talk, FieldId.MASS)).containsExactly("scale.early");
    assertThat(talk.view().asked()).isEqualTo("Species");
  }

  @Test
  void aMassOfTheBirdBeforeIsDropped() {
    Talk talk = withBalance().weigh("0.0", "22.3", "22.3");
    talk.say("two eight four one five five six zero one").say("negative");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("-");
    assertThat(talk.weigh("0.0", "23.1", "23.1").field(FieldId.MASS)).isEqualTo("23.1");
  }

  @Test
  void twinsOfWhichOneFitsAreAskedForTheirDigits() {
    Talk talk = Talk.atFenwick().say("weight fifty");
    assertThat(talk.lastSpoken()).isEqualTo("mass, one five, or five zero. say the digits");
    assertThat(talk.view().question().orElseThrow()).contains("15 or 50", "They sound alike");
    talk.say("affirm");
    assertThat(talk.field(FieldId.MASS)).as("affirm means neither").isEqualTo("-");
    assertThat(talk.view().question()).isPresent();
    assertThat(talk.say("one five").field(FieldId.MASS)).isEqualTo("15");
    assertThat(talk.view().question()).isEmpty();
  }

  @Test
  void twinsAreAskedInOtherWordsWhereTheyAreSaidAgain() {
    Talk talk = Talk.atFenwick().say("weight fifty").say("fifty");
    assertThat(talk.lastSpoken())
        .isEqualTo("mass, digits only. one five, or five zero. say the digits");
    assertThat(talk.keys("50\n").field(FieldId.MASS)).isEqualTo("50");
  }

  @ParameterizedTest
  @ValueSource(strings = {"negative", "next field", "-", "*"})
  void twinsAreDropped(String way) {
    Talk talk = Talk.atFenwick().say("weight fifty");
    talk = way.length() == 1 ? talk.keys(way) : talk.say(way);
    assertThat(talk.view().question()).isEmpty();
    assertThat(talk.field(FieldId.MASS)).isEqualTo("-");
  }

  @Test
  void whatWasSaidBehindTwinsIsTaken() {
    Talk talk = Talk.atFenwick().say("weight fifty wing nine two").say("five zero");
    assertThat(talk.field(FieldId.MASS)).isEqualTo("50");
    assertThat(talk.field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void aSaveThatFailedIsAskedForByOneWord() {
    Dialogue dialogue = new Dialogue(Fenwick.setup());
    Talk talk = Talk.atFenwick().say("two eight four one five five six zero one");
    talk.say("white breasted nuthatch").say("second year").say("male");
    Step saving = dialogue.step(talk.state(), heard(talk, "save record"));
    Step failed =
        dialogue.step(
            saving.state(), new Event.StoreFailed(talk.now(), "The disk is full; make room."));
    assertThat(failed.state().face().lastSaid()).isEqualTo("not stored yet. save record");
    assertThat(failed.state().face().message()).contains("Affirm, or Enter, saves again");
    Step again = dialogue.step(failed.state(), heard(talk, "affirm"));
    assertThat(again.effects()).anyMatch(Effect.SaveRecord.class::isInstance);
  }

  private static Event.Heard heard(Talk talk, String words) {
    return new Event.Heard(talk.now(), Utterance.of(words), talk.now());
  }
}
