package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The program's own vocabulary against its own tables. */
class VocabularyTest {

  /** What is said in digits and letters, or listed by a station, needs no words of its own. */
  private static boolean needsWords(FieldSpec spec, CodeTable.Row row) {
    boolean isSpelled = row.code().matches("\\d[A-P]?");
    return !row.isNumber() && !isSpelled && !LISTED.contains(spec.id());
  }

  private static final Set<FieldId> LISTED = Set.of(FieldId.NET, FieldId.BANDER, FieldId.SCRIBE);

  @ParameterizedTest
  @EnumSource(CodeSet.class)
  void everyCodeOfTheTablesCanBeSaid(CodeSet set) {
    int looked = 0;
    for (FieldSpec spec : WholeRecord.form(set).fields()) {
      for (CodeTable.Row row : Within.table(spec).map(CodeTable::rows).orElse(List.of())) {
        if (needsWords(spec, row)) {
          looked++;
          assertThat(Fenwick.vocabulary().forms())
              .as("%s %s", spec.spoken(), row.code())
              .anyMatch(f -> isCode(f.meaning(), spec.id(), row.code()));
        }
      }
    }
    assertThat(looked).isGreaterThan(250);
  }

  private static boolean isCode(Token token, FieldId field, String code) {
    Token meaning = token instanceof Token.NameOrCode both ? both.words() : token;
    return meaning instanceof Token.CodeWords words
        && words.fields().contains(field)
        && words.code().equals(code);
  }

  @ParameterizedTest
  @EnumSource(CodeSet.class)
  void everyMeaningOfTheVocabularyResolves(CodeSet set) {
    assertThat(VocabularyCheck.problems(Fenwick.vocabulary(), WholeRecord.form(set))).isEmpty();
    assertThat(VocabularyCheck.problems(Fenwick.vocabulary(), Fenwick.form())).isEmpty();
  }

  @Test
  void withinLeavesOutFieldsAndCodesThatTheStationDoesNotHave() {
    List<String> laboratory = texts(CodeSet.LABORATORY);
    List<String> euring = texts(CodeSet.EURING);
    assertThat(laboratory).contains("skull", "second year").doesNotContain("fourth year");
    assertThat(euring).contains("fourth year", "patch present").doesNotContain("after sixth year");
  }

  private static List<String> texts(CodeSet set) {
    return Fenwick.vocabulary().within(WholeRecord.form(set)).forms().stream()
        .map(SpokenForm::text)
        .toList();
  }

  @Test
  void everyFormMeansWhatItsLineSays() {
    for (SpokenForm form : Fenwick.vocabulary().forms()) {
      assertThat(Tokens.of(Utterance.of(form.text()).words(), Fenwick.vocabulary()))
          .as(form.where())
          .contains(List.of(form.meaning()));
    }
  }

  /** A form that is cut into pieces which are forms too must not get another meaning by it. */
  @Test
  void noFormMeansSomethingElseWhenItIsReadAsSeveral() {
    Vocabulary vocabulary = Fenwick.vocabulary();
    Set<String> texts =
        vocabulary.forms().stream().map(SpokenForm::text).collect(Collectors.toSet());
    List<String> made =
        vocabulary.forms().stream().map(SpokenForm::text).filter(t -> isMade(t, texts)).toList();
    assertThat(made)
        .containsExactlyInAnyOrder(
            // the pieces mean the same
            "age unknown",
            "sex unknown",
            // two names in a row, and a code with a letter behind it, mean nothing
            "band size",
            "hummingbird size alpha",
            "hummingbird size bravo",
            // "no" takes back only for a number behind it
            "no moult limit",
            "no molt limit",
            "no mouth limit");
  }

  private static boolean isMade(String text, Set<String> texts) {
    for (int blank = text.indexOf(' '); blank >= 0; blank = text.indexOf(' ', blank + 1)) {
      String rest = text.substring(blank + 1);
      if (texts.contains(text.substring(0, blank))
          && (texts.contains(rest) || isMade(rest, texts))) {
        return true;
      }
    }
    return false;
  }

  @Test
  void takesFormsOfTheStationAndNamesThoseThatMeanSomethingElseAlready() {
    SpokenForm.Section section = new SpokenForm.Section("station", false, false, false);
    Token net = new Token.CodeWords(Set.of(FieldId.NET), "RB");
    List<String> problems = new ArrayList<>();
    SpokenForm reeds = new SpokenForm(List.of("reed", "bed"), net, section, "station.toml");
    SpokenForm wing = new SpokenForm(List.of("affirm"), net, section, "station.toml");
    Vocabulary more = Fenwick.vocabulary().with(List.of(reeds, wing), problems);
    assertThat(more.forms()).contains(reeds).doesNotContain(wing);
    assertThat(problems)
        .singleElement()
        .asString()
        .startsWith("station.toml: \"affirm\" already has another meaning at grammars/commands");
  }

  @Test
  void everyCommandAndFieldHasAWord() {
    List<Token> meanings =
        Fenwick.vocabulary().forms().stream().map(SpokenForm::meaning).collect(Collectors.toList());
    for (Command command : Command.values()) {
      assertThat(meanings).contains(new Token.Order(command));
    }
    for (FieldId field : FieldId.values()) {
      assertThat(meanings)
          .as("%s", field)
          .anyMatch(
              m ->
                  m.equals(new Token.Field(field))
                      || m instanceof Token.NameOrCode both && both.name().field() == field);
    }
  }

  @Test
  void problemsNameFileAndLineOfACodeThatNoTableHas() {
    assertThat(problems("song sparow = code species SOSX"))
        .containsExactly(
            "own.words:1: there is no code SOSX in the species table;"
                + " correct the line or add the code.");
    assertThat(problems("nobody knows = code * Q"))
        .containsExactly(
            "own.words:1: there is no code Q in any table; correct the line or add the code.");
    assertThat(problems("nine two = code wing 92"))
        .containsExactly("own.words:1: the field has no codes; correct the line.");
  }

  private static List<String> problems(String line) {
    List<String> problems = new ArrayList<>();
    Vocabulary vocabulary =
        WordsFile.join(List.of(WordsFile.read("own.words", List.of(line))), problems);
    problems.addAll(VocabularyCheck.problems(vocabulary, Fenwick.form()));
    return problems;
  }

  @Test
  void phrasesAreHeardWholeButForDigitsAndLetters() {
    List<String> phrases = Fenwick.vocabulary().phrases().stream().map(SpokenForm::text).toList();

    assertThat(phrases).contains("black chinned hummingbird", "read back", "hatch year");
    assertThat(phrases).doesNotContain("hundred and", "nine tall", "hummingbird size alpha");
    assertThat(phrases).allMatch(p -> p.contains(" "));
  }
}
