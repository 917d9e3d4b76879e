package org.calamus.core.dialogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Credibility;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Utterance;
import org.calamus.core.speech.Word;
import org.calamus.support.Fenwick;
import org.calamus.support.Talk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AccountsTest {

  private static final Instant AT = Instant.parse("2026-06-13T07:00:00Z");

  private final Dialogue dialogue = new Dialogue(Fenwick.setup());
  private final Accounts accounts = dialogue.accounts();

  private static Talk atWing() {
    return Talk.atFenwick()
        .say("two eight four one five five six zero one")
        .say("white breasted nuthatch")
        .say("second year")
        .say("male");
  }

  private Account account(State before, Utterance utterance) {
    Event.Heard heard = new Event.Heard(AT, utterance, AT);
    return accounts.of(before, heard, dialogue.step(before, heard));
  }

  private Account account(State before, String words) {
    return account(before, Utterance.of(words));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # said               | understood             | outcome
          nine two             | VALUES WING=92         | TAKEN WING=92
          sixty                | VALUES WING=?          | ASKED_AGAIN
          wing nine two age after second year | VALUES WING=92 AGE=ASY | TAKEN WING=92 AGE=ASY
          one one two          | VALUES WING=112        | QUESTION
          zero                 | VALUES WING=0          | REFUSED
          correction female    | VALUES SEX=F           | TAKEN SEX=F
          mass                 | FIELD MASS             | COMMAND
          next field           | COMMAND NEXT           | COMMAND
          read back wing       | COMMAND READBACK WING  | COMMAND
          end session          | COMMAND END            | QUESTION
          squirrel nine        | UNCLEAR                | ASKED_AGAIN
          [unk]                | NOTHING                | NOTHING
          """)
  void tellsWhatBecameOfWhatWasSaidWhileTheWingIsAsked(
      String said, String understood, String outcome) {
    Account account = account(atWing().state(), said);
    assertThat(text(account.understood())).isEqualTo(understood);
    String taken = String.join(" ", account.outcome().taken());
    assertThat((account.outcome().kind() + " " + taken).strip()).isEqualTo(outcome);
  }

  private static String text(Understood understood) {
    return (understood.kind() + " " + understood.what()).strip();
  }

  @Test
  void tellsWhatWasAnswered() {
    assertThat(account(atWing().state(), "nine two").outcome().said())
        .isEqualTo("wing nine two. mass");
  }

  @Test
  void tellsWhatTheUtteranceMet() {
    Circumstances met = account(atWing().say("one one two").state(), "affirm").met();
    assertThat(met.asked()).contains(FieldId.WING);
    assertThat(met.isQuestioning()).isTrue();
    assertThat(met.question()).contains("112 mm");
    assertThat(met.corrects()).contains(FieldId.WING);
    assertThat(met.values())
        .containsEntry(FieldId.SPECIES, "WBNU")
        .containsEntry(FieldId.AGE, "SY");
  }

  @Test
  void affirmingTakesTheValueInQuestion() {
    Account account = account(atWing().say("one one two").state(), "affirm");
    assertThat(text(account.understood())).isEqualTo("COMMAND AFFIRM");
    assertThat(account.outcome().taken()).containsExactly("WING=112");
  }

  @Test
  void nothingComesOfWhatIsSaidWhilePaused() {
    State paused = Talk.atFenwick().say("console standby").state();
    Account account = account(paused, "nine two");
    assertThat(account.met().isPaused()).isTrue();
    assertThat(account.understood().kind()).isEqualTo(Understood.Kind.UNHEEDED);
    assertThat(account.outcome()).isEqualTo(new Outcome(Outcome.Kind.NOTHING, List.of(), ""));
    assertThat(text(account(paused, "console resume listening").understood()))
        .isEqualTo("COMMAND RESUME");
  }

  @Test
  void nothingComesOfWhatIsSaidWhileTheVoiceSpeaks() {
    Talk talk = atWing();
    Account account = account(talk.event(new Event.VoiceBegan(talk.now())).state(), "nine two");
    assertThat(account.understood().kind()).isEqualTo(Understood.Kind.UNHEEDED);
    assertThat(account.outcome().kind()).isEqualTo(Outcome.Kind.NOTHING);
  }

  @Test
  void namesTheSignsAgainstAnUtterance() {
    Utterance unsure =
        new Utterance(
            List.of(new Word("nine", 0.2, 0, 300), Word.of("two")),
            -20,
            Duration.ofMillis(500),
            30);
    assertThat(account(atWing().state(), unsure).signs())
        .containsExactly(Credibility.Sign.UNSURE_WORD);
  }

  /** As heard of the real speaker of the measurement, who said "eighty four". */
  @Test
  void waysToHearThatComeToTheSameValueCountTogether() {
    Utterance heard = rivals("eighteen four", 0.5, "eighty four", 0.45, "eighty field", 0.05);
    Account account = account(atWing().state(), heard);
    assertThat(account.signs()).isEmpty();
    assertThat(account.understood().what()).isEqualTo("WING=84");
    assertThat(account.outcome().taken()).containsExactly("WING=84");
  }

  @Test
  void waysToHearThatComeToOtherValuesAreAskedAgain() {
    Account account = account(atWing().state(), rivals("nine two", 0.5, "nine three", 0.5));
    assertThat(account.signs()).containsExactly(Credibility.Sign.UNSURE_WORD);
    assertThat(account.outcome().taken()).isEmpty();
  }

  private static Utterance rivals(Object... wordsAndShares) {
    List<Hypothesis> all = new ArrayList<>();
    for (int i = 0; i < wordsAndShares.length; i += 2) {
      List<Word> words = Utterance.of((String) wordsAndShares[i]).words();
      all.add(new Hypothesis(words, (Double) wordsAndShares[i + 1]));
    }
    return Utterance.of(all, -20, Duration.ofMillis(700), 30, Duration.ofMillis(700));
  }

  /** The ranges of the species in the hand tell sixteen from sixty, later as well as then. */
  @Test
  void understandsLaterByWhatTheRecordHeld() {
    Circumstances chickadee =
        Circumstances.asking(FieldId.WING, Map.of(FieldId.SPECIES, "BCCH", FieldId.KIND, "N"));
    Circumstances nuthatch = Circumstances.asking(FieldId.WING, Map.of(FieldId.SPECIES, "WBNU"));
    Utterance sixty = Utterance.of("sixty");
    assertThat(accounts.understood(chickadee, AT, sixty).what()).isEqualTo("WING=60");
    assertThat(accounts.understood(nuthatch, AT, sixty).what()).isEqualTo("WING=?");
  }

  @Test
  void completesLastDigitsByTheBandThatWasExpected() {
    Circumstances met =
        new Circumstances(
            Optional.of(FieldId.BAND),
            "",
            false,
            false,
            Optional.empty(),
            BandNumber.parse("2841-55602"),
            Map.of());
    assertThat(accounts.understood(met, AT, Utterance.of("six zero two")).what())
        .isEqualTo("BAND=2841-55602");
  }

  @Test
  void leavesOutWhatTodaysFormDoesNotKnow() {
    Circumstances met =
        Circumstances.asking(FieldId.WING, Map.of(FieldId.MASS, "heavy", FieldId.TIME, "noon"));
    assertThat(accounts.understood(met, AT, Utterance.of("nine two")).what()).isEqualTo("WING=92");
  }

  @ParameterizedTest
  @CsvSource({"WING", "WING?", "NONE", "NONE?", "PAUSED", "BAND"})
  void makesAGrammarAnewByItsName(String name) {
    assertThat(accounts.grammar(name)).map(Grammar::name).contains(name);
  }

  @Test
  void makesTheSameGrammarAsTheDialogue() {
    State asking = atWing().state();
    State questioning = atWing().say("one one two").state();
    for (State state : List.of(asking, questioning)) {
      Grammar then = dialogue.grammar(state);
      assertThat(accounts.grammar(then.name())).contains(then);
    }
  }

  @Test
  void makesNoGrammarOfAnUnknownName() {
    assertThat(accounts.grammar("PLUMES")).isEmpty();
  }
}
