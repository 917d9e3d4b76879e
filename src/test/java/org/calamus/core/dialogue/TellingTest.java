package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What the console tells without changing anything, and what it says to what it did not hear. */
class TellingTest {

  private static Talk nuthatch() {
    return Talk.atFenwick()
        .say("two eight four one five five six zero one")
        .say("white breasted nuthatch")
        .say("second year")
        .say("male");
  }

  @Test
  void saysTheSameAgainAndThenInOtherWords() {
    Talk talk = nuthatch().say("nine two");
    talk.spoken();
    assertThat(talk.say("say again").lastSpoken()).isEqualTo("wing nine two. mass");
    assertThat(talk.say("say again").lastSpoken()).isEqualTo("last was wing nine two. now mass");
    assertThat(talk.say("say again").lastSpoken()).isEqualTo("wing nine two. mass");
    talk = nuthatch().say("two nine").say("say again").say("say again");
    assertThat(talk.lastSpoken())
        .isEqualTo("wing two nine is in question. affirm keeps it, negative drops it");
  }

  @Test
  void readsALongRecordBackInGroups() {
    Talk talk = nuthatch().say("nine two").say("two two point three").say("read back");
    assertThat(talk.lastSpoken())
        .isEqualTo(
            "band two eight four one five five six zero one. white breasted nuthatch. second year."
                + " male");
    talk.event(new Event.Ticked(talk.now().plusSeconds(1)));
    assertThat(talk.lastSpoken()).isEqualTo("wing nine two. mass two two point three");
    talk.event(new Event.Ticked(talk.now().plusSeconds(1)));
    assertThat(talk.spoken()).isEmpty();
  }

  @Test
  void aGroupWaitsForTheVoiceToEnd() {
    Talk talk = nuthatch().say("nine two");
    talk.event(new Event.PartUp(talk.now(), Part.VOICE, "a voice")).say("read back");
    talk.spoken();
    talk.event(new Event.Ticked(talk.now()));
    assertThat(talk.spoken()).as("the voice has not begun").isEmpty();
    talk.event(new Event.VoiceBegan(talk.now())).event(new Event.Ticked(talk.now()));
    assertThat(talk.spoken()).isEmpty();
    talk.event(new Event.VoiceEnded(talk.now())).event(new Event.Ticked(talk.now()));
    assertThat(talk.spoken()).containsExactly("wing nine two");
  }

  @Test
  void aWordOrAKeyEndsTheReadingBack() {
    Talk talk = nuthatch().say("nine two").say("read back").say("two two point three");
    talk.spoken();
    talk.event(new Event.Ticked(talk.now()));
    assertThat(talk.spoken()).isEmpty();
    talk = nuthatch().say("nine two").keys("+*2");
    talk.spoken();
    talk.event(new Event.Ticked(talk.now()));
    assertThat(talk.spoken()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"read back wing, wing nine two", "read back weight, mass has no value"})
  void readsBackOneField(String words, String told) {
    assertThat(nuthatch().say("nine two").say(words).lastSpoken()).isEqualTo(told);
    assertThat(nuthatch().say("nine two").keys("+92").lastSpoken()).isEqualTo("mass has no value");
  }

  @Test
  void saysWhatIsMissing() {
    Talk talk = Talk.atFenwick().say("white breasted nuthatch").say("what is missing");
    assertThat(talk.lastSpoken()).isEqualTo("missing band, age, sex. two more asked");
    assertThat(talk.view().message())
        .isEqualTo("Missing: Band number, Age, Sex. Not given: Wing chord, Mass.");
    assertThat(nuthatch().keys("+93").lastSpoken())
        .isEqualTo("nothing required is missing. two more asked");
  }

  @Test
  void saysWhatFitsNowAndListsTheRest() {
    Talk talk = nuthatch().say("which words");
    assertThat(talk.lastSpoken()).isEqualTo("wing, digit by digit. next field leaves it");
    assertThat(talk.view().choices())
        .contains(
            new View.Choice("++", "save record"),
            new View.Choice("Enter", "affirm", "no question"));
    assertThat(talk.keys("92\n").field(FieldId.WING)).as("digits are no menu").isEqualTo("92");
    assertThat(nuthatch().say("two nine").keys("+.").lastSpoken())
        .isEqualTo("affirm keeps it, negative drops it. or give another value");
    assertThat(Talk.atFenwick().say("end session").say("which words").spoken()).isNotEmpty();
  }

  @Test
  void theListKeepsItsPlacesWhateverTheState() {
    List<String> before = keys(Talk.atFenwick().say("which words"));
    assertThat(keys(nuthatch().say("two nine").say("which words"))).isEqualTo(before);
  }

  private static List<String> keys(Talk talk) {
    return talk.view().choices().stream().map(View.Choice::keys).toList();
  }

  @ParameterizedTest
  @EnumSource(Command.class)
  void everyCommandHasAWordAndAKeyOfItsOwn(Command command) {
    assertThat(Fenwick.setup().words(command)).isPresent();
    List<Sayable> rows = Sayable.ALL.stream().filter(s -> s.command() == command).toList();
    assertThat(rows).hasSize(1);
    Set<Command> sameKeys =
        Sayable.ALL.stream()
            .filter(s -> s.keys().equals(rows.get(0).keys()))
            .map(Sayable::command)
            .collect(Collectors.toCollection(() -> EnumSet.noneOf(Command.class)));
    assertThat(sameKeys)
        .isIn(
            Set.of(command),
            EnumSet.of(Command.NEGATIVE, Command.CORRECT, Command.PAGE_CAPTURE),
            EnumSet.of(Command.NEXT, Command.PAGE_ON),
            EnumSet.of(Command.REPEAT, Command.PAGE_BACK),
            EnumSet.of(Command.STAND_BY, Command.RESUME),
            EnumSet.of(Command.TALK_KEY, Command.TALK_OPEN));
  }

  @Test
  void neverSaysTheSameToTwoMissesInARow() {
    Talk talk = nuthatch();
    talk.spoken();
    for (int i = 0; i < 8; i++) {
      later(talk).say(i % 2 == 0 ? "point" : "point point");
    }
    List<String> said = talk.spoken();
    assertThat(said).hasSize(8);
    assertThat(said.subList(0, 4))
        .containsExactly(
            "say the digits behind the point",
            "wing, digit by digit, or correction",
            "use the keypad for wing",
            "wing on the keypad, or say its name");
    for (int i = 1; i < said.size(); i++) {
      assertThat(said.get(i)).isNotEqualTo(said.get(i - 1));
    }
  }

  /** So long after that it is no sign of others' talk. */
  private static Talk later(Talk talk) {
    return talk.event(new Event.LevelMeasured(talk.now().plus(Duration.ofMinutes(3)), -60, false));
  }

  private static Talk givenUp() {
    Talk talk = nuthatch().say("point").say("point point").say("point");
    talk.spoken();
    return talk;
  }

  @Test
  void stopsGuessingAfterThreeMisses() {
    Talk talk = givenUp().say("nine two");
    assertThat(talk.field(FieldId.WING)).isEqualTo("-");
    assertThat(talk.view().message()).contains("strike it on the keypad, or say the field's name");
    assertThat(talk.keys("92\n").field(FieldId.WING)).isEqualTo("92");
  }

  @Test
  void aFieldThatIsNamedIsListenedForAgain() {
    assertThat(givenUp().say("wing nine two").field(FieldId.WING)).isEqualTo("92");
    assertThat(givenUp().say("wing").say("nine two").field(FieldId.WING)).isEqualTo("92");
    assertThat(givenUp().say("weight").say("wing").say("nine two").field(FieldId.WING))
        .isEqualTo("92");
  }

  @Test
  void missesAreCountedForTheirField() {
    Talk talk = nuthatch().say("point").say("point point").say("say again").say("sex female");
    assertThat(talk.say("point").lastSpoken()).isEqualTo("use the keypad for wing");
    talk = nuthatch().say("point").say("point point").say("next field").say("point");
    assertThat(talk.lastSpoken()).isNotEqualTo("use the keypad for mass");
  }

  @Test
  void noiseIsNoMiss() {
    Talk talk = nuthatch();
    for (int i = 0; i < 5; i++) {
      later(talk);
      talk.event(
          new Event.Heard(talk.now(), Utterance.of(List.of(Word.of(Word.UNKNOWN))), talk.now()));
    }
    assertThat(talk.say("nine two").field(FieldId.WING)).isEqualTo("92");
  }
}
