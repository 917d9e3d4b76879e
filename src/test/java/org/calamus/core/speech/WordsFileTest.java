package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsFileTest {

  private static WordsFile.Contents read(String... lines) {
    return WordsFile.read("a.words", List.of(lines));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          two                     | a line is  words = meaning  or  word / phones.
          = digit 2               | there is no word before the sign.
          / T UW                  | there is no word before the sign.
          two = numeral 2         | "numeral 2" is no meaning that Calamus knows.
          two =                   | "" is no meaning that Calamus knows.
          two = digit             | "digit" is no meaning that Calamus knows.
          two = digit 12          | "digit 12" is no meaning that Calamus knows.
          two = digit 2 3         | "digit 2 3" is no meaning that Calamus knows.
          ten = number 9          | "number 9" is no meaning that Calamus knows.
          sixty = tens 65         | "tens 65" is no meaning that Calamus knows.
          alpha = letter a        | "letter a" is no meaning that Calamus knows.
          wing = field wings      | "field wings" is no meaning that Calamus knows.
          male = code M           | "code M" is no meaning that Calamus knows.
          male = code sexes M     | "code sexes M" is no meaning that Calamus knows.
          male = code sex, M      | "code sex, M" is no meaning that Calamus knows.
          stop = command stop     | "command stop" is no meaning that Calamus knows.
          fife = digit 5 / F AY V2| "V2" is no phone of the model.
          fife / f ay f           | "f ay f" is no phone of the model.
          fife = digit 5 /        | there are no phones behind the slash.
          one two / W AH N        | a pronunciation stands behind one word, not several.
          section                 | a section needs a name.
          section numbers loose   | "loose" is no kind of section; use joined, short or written.
          """)
  void namesFileAndLineOfAMistake(String line, String problem) {
    assertThat(read("# first", "", line).problems()).containsExactly("a.words:3: " + problem);
  }

  @Test
  void readsTheLinesBehindAMistakeToo() {
    WordsFile.Contents contents = read("two", "three = digit 3", "four = digit x");
    assertThat(contents.forms()).extracting(SpokenForm::text).containsExactly("three");
    assertThat(contents.problems()).hasSize(2);
  }

  @Test
  void readsWordsInAnyCaseWithTabsAndSpacesAround() {
    WordsFile.Contents contents =
        read("section\tnumbers\tjoined", "\tNiner\t=\tdigit\t9\t/\tN  AY N ER\t# radio");
    assertThat(contents.problems()).isEmpty();
    assertThat(contents.forms())
        .containsExactly(
            new SpokenForm(
                List.of("niner"),
                new Token.Digit(9),
                new SpokenForm.Section("numbers", true, false, false),
                "a.words:2"));
    assertThat(contents.pronunciations()).isEqualTo(Map.of("niner", List.of("N AY N ER")));
  }

  @Test
  void joinNamesBothPlacesOfAFormWithTwoMeanings() {
    List<String> problems = new ArrayList<>();
    WordsFile.join(
        List.of(
            read("five = digit 5"),
            WordsFile.read("b.words", List.of("", "five = command save", "five = digit 5"))),
        problems);
    assertThat(problems)
        .containsExactly(
            "b.words:2: \"five\" already has another meaning at a.words:1; change one of the two.");
  }

  @Test
  void joinMakesANameAndACodeOfCertainFieldsOneMeaning() {
    Token.NameOrCode both =
        new Token.NameOrCode(
            new Token.Field(FieldId.SKULL),
            new Token.CodeWords(Set.of(FieldId.HOW_AGED, FieldId.HOW_SEXED), "SK"));
    WordsFile.Contents name = read("skull = field skull");
    WordsFile.Contents code = read("skull = code how-aged,how-sexed SK");
    for (List<WordsFile.Contents> files :
        List.of(List.of(name, code), List.of(code, name), List.of(name, code, name, code))) {
      List<String> problems = new ArrayList<>();
      assertThat(WordsFile.join(files, problems).forms())
          .extracting(SpokenForm::meaning)
          .containsExactly(both);
      assertThat(problems).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "field skull, code * SK",
    "field skull, field fat",
    "code how-aged SK, code how-sexed SK",
    "field skull, digit 6"
  })
  void joinStillRefusesEveryOtherSecondMeaning(String first, String second) {
    List<String> problems = new ArrayList<>();
    WordsFile.join(List.of(read("skull = " + first, "skull = " + second)), problems);
    assertThat(problems).hasSize(1).first().asString().contains("already has another meaning");
  }

  @Test
  void joinTakesAFormThatStandsTwiceWithOneMeaningOnce() {
    List<String> problems = new ArrayList<>();
    Vocabulary joined =
        WordsFile.join(List.of(read("five = digit 5"), read("five = digit 5")), problems);
    assertThat(problems).isEmpty();
    assertThat(joined.forms()).hasSize(1);
  }
}
