package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which of the ways to hear an utterance is taken. What is heard for what is from recordings. */
class SenseTest {

  private static final Interpreter INTERPRETER =
      new Interpreter(Fenwick.vocabulary(), Fenwick.form());

  /** An utterance of hypotheses written as "words 0.6 | other words 0.4". */
  private static Utterance heard(String hypotheses) {
    List<Hypothesis> all = new ArrayList<>();
    int longest = 0;
    for (String hypothesis : hypotheses.split(" \\| ")) {
      List<String> parts = List.of(hypothesis.trim().split(" "));
      List<String> words = parts.subList(0, parts.size() - 1);
      longest = Math.max(longest, words.size());
      double share = Double.parseDouble(parts.get(parts.size() - 1));
      all.add(new Hypothesis(words.stream().map(Word::of).toList(), share));
    }
    Duration length = Duration.ofMillis(300L * longest);
    return Utterance.of(all, -20, length, 30, length);
  }

  private static Utterance chosen(String hypotheses, String asked) {
    return chosen(heard(hypotheses), FieldId.valueOf(asked));
  }

  private static Utterance chosen(Utterance heard, FieldId asked) {
    return INTERPRETER.heardAs(
        heard,
        Optional.of(asked),
        Optional.empty(),
        Fenwick.expected(Optional.empty()),
        Sense::ofItself);
  }

  private static Meaning meaning(String hypotheses, String asked) {
    return INTERPRETER.interpret(
        heard(hypotheses),
        Optional.of(FieldId.valueOf(asked)),
        Optional.empty(),
        Fenwick.expected(Optional.empty()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          # asked; heard; taken for
          WING; six field 0.6 | six two 0.4                        ; six two
          AGE; cowbird this year 0.6 | hatched this year 0.4       ; hatched this year
          SEX; mail 0.5 | male 0.4 | eight 0.1                     ; male
          MASS; thirty six twenty oh 0.9 | thirty six point two 0.1; thirty six point two
          WING; nine two 0.7 | nine three 0.3                      ; nine two
          WING; nine two 0.3 | field field 0.5 | nine three 0.2    ; nine two
          """)
  void whatMakesSenseIsTaken(String asked, String hypotheses, String words) {
    assertThat(chosen(hypotheses, asked).text()).isEqualTo(words);
  }

  @Test
  void whatMeansNothingHardlyCountsAgainstIt() {
    Utterance chosen = chosen("six field 0.6 | six two 0.4", "WING");
    assertThat(chosen.lowestConfidence()).isCloseTo(0.4 / (0.4 + 0.01 * 0.6), within(1e-9));
    assertThat(meaning("six field 0.6 | six two 0.4", "WING")).isInstanceOf(Meaning.Values.class);
  }

  @Test
  void besideAWordAloneNonsenseCountsFully() {
    assertThat(chosen("four 0.6 | field 0.4", "FAT").lowestConfidence())
        .isCloseTo(0.6, within(1e-9));
    assertThat(meaning("four 0.6 | field 0.4", "FAT")).isInstanceOf(Meaning.Unclear.class);
    assertThat(meaning("four 0.85 | field 0.15", "FAT")).isInstanceOf(Meaning.Values.class);
  }

  @Test
  void rivalsThatMeanSomethingElseMakeItUnsure() {
    assertThat(chosen("nine two 0.6 | nine three 0.4", "WING").lowestConfidence())
        .isCloseTo(0.6, within(1e-9));
    assertThat(meaning("nine two 0.6 | nine three 0.4", "WING")).isInstanceOf(Meaning.Values.class);
    assertThat(meaning("nine two 0.45 | nine three 0.4 | nine one 0.15", "WING"))
        .isInstanceOf(Meaning.Unclear.class);
  }

  @Test
  void waysThatMeanTheSameCountTogether() {
    String same = "nine zero 0.5 | nine oh 0.5";
    assertThat(chosen(same, "WING").lowestConfidence()).isEqualTo(1);
    assertThat(meaning(same, "WING")).isInstanceOf(Meaning.Values.class);
  }

  @Test
  void anUnknownWordCountsAsMuchAsAKnownOne() {
    String talk = "nine [unk] 0.6 | nine two 0.4";
    assertThat(chosen(talk, "WING").lowestConfidence()).isCloseTo(0.4, within(1e-9));
    assertThat(meaning(talk, "WING")).isInstanceOf(Meaning.Unclear.class);
  }

  @Test
  void talkOfOtherThingsIsNotMadeAValue() {
    String talk = "[unk] [unk] nine 0.9 | nine two 0.1";
    assertThat(chosen(talk, "WING").text()).isEqualTo("[unk] [unk] nine");
    assertThat(meaning(talk, "WING")).isInstanceOf(Meaning.Chatter.class);
  }

  @Test
  void severalValuesAreTakenOnlyWhereTheyWereHeardFirst() {
    String several = "mass two two wing nine two";
    assertThat(chosen(several + " 0.6 | fat field 0.4", "WING").text()).isEqualTo(several);
    String behind = "mass two two fat nine two 0.45 | " + several + " 0.4 | field 0.15";
    assertThat(chosen(behind, "WING").text()).doesNotContain("wing");
    assertThat(meaning(behind, "WING")).isInstanceOf(Meaning.Unclear.class);
  }

  @Test
  void whereNothingMakesSenseTheWordsStay() {
    Utterance heard = heard("field field 0.6 | field fat 0.4");
    assertThat(chosen(heard, FieldId.WING)).isEqualTo(heard);
  }

  @Test
  void typedWordsStay() {
    Utterance typed = Utterance.of("nine two");
    assertThat(chosen(typed, FieldId.WING)).isEqualTo(typed);
  }

  @Test
  void aBandThatWasOnTheBirdMustBeSurer() {
    String rivals =
        "one four eight eight six eight three seven five 0.8"
            + " | one four eight six eight three seven five 0.2";
    assertThat(meaning(rivals, "OLD_BAND")).isInstanceOf(Meaning.Unclear.class);
    assertThat(meaning(rivals, "BAND")).isInstanceOf(Meaning.Values.class);
    assertThat(meaning(rivals.replace("0.8", "0.9").replace("0.2", "0.1"), "OLD_BAND"))
        .isInstanceOf(Meaning.Values.class);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      textBlock =
          """
          # asked; heard; whether it is taken
          WING; hatch year 0.7 | female 0.3                   ; false
          WING; hatch year 0.85 | female 0.15                 ; true
          AGE ; hatch year 0.7 | second year 0.3              ; true
          FAT ; add band 0.7 | end session 0.3                ; false
          FAT ; add band 0.85 | end session 0.15              ; true
          FAT ; wing seven two 0.7 | wing seven three 0.3     ; false
          WING; wing seven two 0.7 | wing seven three 0.3     ; true
          FAT ; negative seven two 0.7 | negative seven three 0.3; true
          """)
  void whatIsNoAnswerMustBeSurer(String asked, String hypotheses, boolean isTaken) {
    Meaning meaning =
        INTERPRETER.interpret(
            heard(hypotheses),
            Optional.of(FieldId.valueOf(asked)),
            Optional.of(FieldId.WING),
            Fenwick.expected(Optional.empty()));
    assertThat(!(meaning instanceof Meaning.Unclear)).isEqualTo(isTaken);
  }

  /** A share is exp(score) over the sum of all: the definition of a posterior, no source needed. */
  @Test
  void sharesFollowFromScores() {
    List<List<Word>> words = Arrays.asList(List.of(Word.of("six")), List.of(Word.of("sex")));
    List<Hypothesis> all = Hypothesis.ofScores(words, List.of(-5702.0, -5702.0 - Math.log(3)));
    assertThat(all.get(0).share()).isCloseTo(0.75, within(1e-9));
    assertThat(all.get(1).share()).isCloseTo(0.25, within(1e-9));
  }

  @Test
  void aWordIsAsSureAsTheHypothesesInWhichItIsSaidAtThatTime() {
    Word seven = new Word("seven", 1, 0, 300);
    List<Hypothesis> all =
        List.of(
            new Hypothesis(List.of(seven, new Word("two", 1, 300, 600)), 0.5),
            new Hypothesis(List.of(seven, new Word("you", 1, 300, 600)), 0.3),
            new Hypothesis(List.of(new Word("two", 1, 10, 100), seven), 0.2));
    Duration length = Duration.ofMillis(600);
    Utterance utterance = Utterance.of(all, -20, length, 30, length);
    assertThat(utterance.text()).isEqualTo("seven two");
    assertThat(utterance.words().get(0).confidence()).isCloseTo(1.0, within(1e-9));
    assertThat(utterance.words().get(1).confidence()).isCloseTo(0.5, within(1e-9));
  }
}
