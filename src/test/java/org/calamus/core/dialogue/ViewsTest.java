package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Command;
import org.calamus.core.speech.Interpreter;
import org.calamus.core.speech.Meaning;
import org.calamus.core.speech.Utterance;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ViewsTest {

  /** States of a session that differ in what can be said and pressed. */
  private enum Situation {
    START,
    IN_THE_MIDDLE("two eight four one five five six zero one", "white breasted nuthatch"),
    ALL_BUT_MEASURES(
        "two eight four one five five six zero one", "white breasted nuthatch second year male"),
    COMPLETE(
        "two eight four one five five six zero one",
        "white breasted nuthatch second year male",
        "wing nine two weight two two point three"),
    DOUBTED(
        "two eight four one five five six zero one", "white breasted nuthatch", "wing two nine"),
    ABANDONING("two eight four one five five six zero one", "abandon record"),
    ENDING("two eight four one five five six zero one", "end session"),
    RESUMING,
    SKIPPED(
        "two eight four one five five six zero one",
        "white breasted nuthatch second year male",
        "save record",
        "six zero three");

    private final List<String> said;

    Situation(String... said) {
      this.said = List.of(said);
    }

    private Talk talk() {
      Talk talk = Talk.atFenwick();
      if (this == RESUMING) {
        CaptureRecord left = IN_THE_MIDDLE.talk().record().orElseThrow();
        talk = new Talk(Fenwick.setup(), Known.nothing());
        talk.event(new Event.Started(talk.now(), Optional.of(left)));
      }
      said.forEach(talk::say);
      talk.spoken();
      return talk;
    }

    private boolean hasQuestion() {
      return this == DOUBTED
          || this == ABANDONING
          || this == ENDING
          || this == RESUMING
          || this == SKIPPED;
    }
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void everyHintDoesTheSameBySpeechAndByKey(Situation situation) {
    List<View.Hint> hints = situation.talk().view().hints();
    assertThat(hints).allSatisfy(h -> assertThat(h.keys()).isNotEmpty());
    for (View.Hint hint : hints.stream().filter(h -> !h.words().isEmpty()).toList()) {
      boolean isExample = hint.keys().startsWith("digits") || hint.keys().startsWith("number");
      if (!isExample) {
        Talk bySpeech = situation.talk().say(hint.words());
        Talk byKey =
            situation.talk().keys(hint.keys().replace(" Enter", "\n").replace("Enter", "\n"));
        assertThat(outcome(byKey))
            .as("%s or %s", hint.words(), hint.keys())
            .isEqualTo(outcome(bySpeech));
      }
    }
  }

  /** All that can be told apart, except how the values came in and when. */
  private static List<Object> outcome(Talk talk) {
    View view = talk.view();
    return List.of(
        talk.effects().stream().anyMatch(Effect.EndSession.class::isInstance),
        talk.spoken(),
        view.asked(),
        view.question(),
        view.question().isPresent() ? "the question" : view.message(),
        view.lines().stream().map(View.Line::value).toList(),
        view.lines().stream().map(View.Line::standing).toList(),
        talk.saved());
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void onlyTheMenuHasNoWordAndItIsShownWhereNoQuestionIsOpen(Situation situation) {
    List<View.Hint> wordless =
        situation.talk().view().hints().stream().filter(h -> h.words().isEmpty()).toList();
    assertThat(wordless)
        .isEqualTo(situation.hasQuestion() ? List.of() : List.of(new View.Hint("", "+", "more")));
  }

  /** A saved bird's wing was corrected, and is to be saved. */
  private static Talk whereAReasonIsAsked() {
    return Talk.atFenwick()
        .say("two eight four one five five six zero one")
        .say("white breasted nuthatch second year male")
        .say("save record")
        .keys("+81\n")
        .say("wing nine two")
        .say("save record");
  }

  @Test
  void anInstrumentThatComesBackDoesNotHideAnotherThatIsDown() {
    Talk talk = Talk.atFenwick();
    for (String port : List.of("A", "B")) {
      talk.event(new Event.PartUp(talk.now(), Part.SCALE, "balance " + port, Optional.of(port)));
    }
    down(talk, "A");
    down(talk, "B");
    talk.event(new Event.PartUp(talk.now(), Part.SCALE, "balance B", Optional.of("B")));
    assertThat(scale(talk)).isEqualTo(new View.Health(Part.SCALE, false, "A is lost: plug it in."));
    talk.event(new Event.PartUp(talk.now(), Part.SCALE, "balance A", Optional.of("A")));
    assertThat(scale(talk).isUp()).isTrue();
  }

  @Test
  void everyInstrumentThatIsLostIsToldByATone() {
    Talk talk = Talk.atFenwick();
    for (String port : List.of("A", "B")) {
      talk.event(new Event.PartUp(talk.now(), Part.SCALE, "balance " + port, Optional.of(port)));
    }
    down(talk, "A");
    down(talk, "B");
    down(talk, "B");
    down(talk, "C");
    assertThat(talk.effects())
        .filteredOn(new Effect.Sound(Tone.LOOK_HERE)::equals)
        .as("one for each that had worked")
        .hasSize(2);
  }

  private static void down(Talk talk, String port) {
    String sentence = port + " is lost: plug it in.";
    talk.event(new Event.PartDown(talk.now(), Part.SCALE, sentence, Optional.of(port)));
  }

  private static View.Health scale(Talk talk) {
    return talk.view().health().stream()
        .filter(h -> h.part() == Part.SCALE)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void everyCommandHasAHintWithAWordAndAKey() {
    Interpreter interpreter = new Interpreter(Fenwick.vocabulary(), Fenwick.form());
    Set<Command> hinted = EnumSet.noneOf(Command.class);
    List<Talk> talks =
        Stream.of(
                Stream.of(Situation.values()).map(Situation::talk),
                Stream.of("+95", "+96", "+70").map(keys -> Talk.atFenwick().keys(keys)),
                Stream.of(whereAReasonIsAsked()))
            .flatMap(some -> some)
            .toList();
    for (Talk talk : talks) {
      for (View.Hint hint : talk.view().hints()) {
        Meaning meaning =
            interpreter.interpret(
                Utterance.of(hint.words()),
                Optional.empty(),
                Optional.empty(),
                Fenwick.expected(Optional.empty()));
        if (meaning instanceof Meaning.Order order) {
          hinted.add(order.command());
        }
      }
    }
    assertThat(hinted).containsExactlyInAnyOrder(Command.values());
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void modeIsCheckExactlyWhileAQuestionIsOpen(Situation situation) {
    Talk talk = situation.talk();
    talk.event(new Event.PartUp(talk.now(), Part.EARS, "a microphone"));
    assertThat(talk.view().mode() == View.Mode.CHECK).isEqualTo(situation.hasQuestion());
    assertThat(talk.view().question().isPresent()).isEqualTo(situation.hasQuestion());
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void aQuestionIsShownOnce(Situation situation) {
    View view = situation.talk().view();
    assertThat(view.question()).isNotEqualTo(Optional.of(view.message()));
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void theQuestionStaysOnTheScreenWhateverIsTold(Situation situation) {
    Talk talk = situation.talk();
    Optional<String> question = talk.view().question();
    talk.say("point point").say("point");
    talk.event(new Event.PartDown(talk.now(), Part.SCALE, "The scale is gone; plug it in."));
    assertThat(talk.view().health())
        .contains(new View.Health(Part.SCALE, false, "The scale is gone; plug it in."));
    assertThat(talk.view().question()).isEqualTo(question);
  }

  @Test
  void modeTellsWhatTheConsoleDoes() {
    Talk talk = Talk.atFenwick();
    assertThat(talk.view().mode()).isEqualTo(View.Mode.KEYPAD);
    talk.event(new Event.PartUp(talk.now(), Part.EARS, "a microphone"));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    talk.event(new Event.LevelMeasured(talk.now(), -20, true));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.HEARING);
    assertThat(talk.view().decibels()).isEqualTo(-20);
    talk.event(new Event.VoiceBegan(talk.now()));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.SPEAKING);
    talk.event(new Event.VoiceEnded(talk.now()));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.LISTENING);
    talk.event(new Event.PartDown(talk.now(), Part.EARS, "The microphone is gone; plug it in."));
    assertThat(talk.view().mode()).isEqualTo(View.Mode.KEYPAD);
    assertThat(talk.view().health())
        .contains(new View.Health(Part.EARS, false, "The microphone is gone; plug it in."));
  }

  @Test
  void aPartThatWorkedAndNoLongerDoesIsToldByATone() {
    Talk talk = Talk.atFenwick();
    talk.event(new Event.PartDown(talk.now(), Part.SCALE, "There is no scale; plug it in."));
    assertThat(talk.effects()).noneMatch(Effect.Sound.class::isInstance);
    talk.event(new Event.PartUp(talk.now(), Part.SCALE, "a balance"));
    talk.event(new Event.PartDown(talk.now(), Part.SCALE, "The scale is gone; plug it in."));
    assertThat(talk.effects()).contains(new Effect.Sound(Tone.LOOK_HERE));
  }

  @Test
  void aPartThatWorksAgainTakesItsComplaintAway() {
    Talk talk = Talk.atFenwick();
    talk.event(new Event.PartDown(talk.now(), Part.SCALE, "The scale is gone; plug it in."));
    talk.event(new Event.PartUp(talk.now(), Part.SCALE, "a balance"));
    assertThat(talk.view().message()).isEmpty();
    assertThat(talk.view().health())
        .contains(new View.Health(Part.SCALE, true, "a balance"))
        .extracting(View.Health::part)
        .containsExactly(Part.EARS, Part.VOICE, Part.SCALE, Part.STORE);
  }

  @Test
  void linesTellHowEveryFieldStands() {
    Talk talk = Situation.DOUBTED.talk();
    assertThat(standings(talk))
        .containsExactly(
            View.Standing.TAKEN,
            View.Standing.TAKEN,
            View.Standing.MISSING,
            View.Standing.MISSING,
            View.Standing.IN_QUESTION,
            View.Standing.EMPTY);
    talk.say("affirm");
    assertThat(standings(talk))
        .containsExactly(
            View.Standing.TAKEN,
            View.Standing.TAKEN,
            View.Standing.ASKED,
            View.Standing.MISSING,
            View.Standing.CONFIRMED,
            View.Standing.EMPTY);
    assertThat(talk.view().lines().get(4))
        .isEqualTo(
            new View.Line(FieldId.WING, "Wing chord", "29 mm", "said", View.Standing.CONFIRMED));
  }

  private static List<View.Standing> standings(Talk talk) {
    return talk.view().lines().stream().map(View.Line::standing).toList();
  }

  @Test
  void inHandCountsFromTheFirstValue() {
    Talk talk = Talk.atFenwick();
    assertThat(talk.view().inHand()).isEmpty();
    talk.say("male");
    talk.event(new Event.Ticked(talk.now().plusSeconds(75)));
    assertThat(talk.view().inHand()).hasValueSatisfying(d -> assertThat(d).hasSeconds(75));
  }

  @Test
  void aLoadThatWasOnTheScaleBeforeItWasSeenEmptyIsExplained() {
    Talk talk = new Talk(Fenwick.setup(Fenwick.balance()), Known.nothing());
    assertThat(talk.weigh("22.3").view().live()).hasValue("22.3 g  stable  empty it first");
    assertThat(talk.weigh("0.0").view().live()).hasValue("0.0 g  stable");
    assertThat(talk.weigh("22.3").view().live()).hasValue("22.3 g  stable");
  }

  @Test
  void aMeasureIsPlacedOnceItIsGivenAndNotBefore() {
    Talk talk = Situation.ALL_BUT_MEASURES.talk();
    assertThat(talk.view().asked()).startsWith("Wing");
    assertThat(talk.view().pictures().strips()).isEmpty();
    Pictures pictures = talk.say("nine two").view().pictures();
    assertThat(pictures.current()).hasValueSatisfying(s -> assertThat(s.name()).isEqualTo("wing"));
    assertThat(pictures.isWeighing()).as("the mass is asked").isTrue();
    Pictures both = talk.say("two two point three").view().pictures();
    assertThat(both.strips()).extracting(Strip::name).containsExactly("wing", "mass");
    assertThat(both.inWork()).hasValue(FieldId.MASS);
  }

  @Test
  void aMeasureInQuestionIsPlaced() {
    Pictures pictures = Situation.DOUBTED.talk().view().pictures();
    assertThat(pictures.current())
        .hasValueSatisfying(s -> assertThat(s.place()).isEqualTo(Strip.Place.LOW));
  }

  @Test
  void cautionsAreShownUntilTheFirstWordOrKey() {
    Talk talk = Talk.atFenwick();
    assertThat(talk.view().cautions()).isNotEmpty();
    assertThat(talk.keys("2").view().cautions()).isEmpty();
  }

  @Test
  void everyCautionIsWholeSentences() {
    assertThat(Talk.atFenwick().view().cautions()).allMatch(c -> c.matches("[A-Z].*\\."));
  }
}
