package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

/** The program's own vocabulary against its own tables. */
class VocabularyTest {

  @Test
  void everyCodeOfTheTablesCanBeSaidInWords() {
    for (FieldSpec spec : Fenwick.form().fields()) {
      if (spec.kind() instanceof FieldKind.Coded coded) {
        for (CodeTable.Row row : coded.table().rows()) {
          Token own = new Token.CodeWords(Optional.of(spec.id()), row.code());
          assertThat(Fenwick.vocabulary().forms())
              .as("%s %s", spec.spoken(), row.code())
              .extracting(SpokenForm::meaning)
              .contains(own);
        }
      }
    }
  }

  @Test
  void everyMeaningOfTheVocabularyResolves() {
    assertThat(VocabularyCheck.problems(Fenwick.vocabulary(), Fenwick.form())).isEmpty();
  }

  @Test
  void everyFormMeansWhatItsLineSays() {
    for (SpokenForm form : Fenwick.vocabulary().forms()) {
      assertThat(Tokens.of(Utterance.of(form.text()).words(), Fenwick.vocabulary()))
          .as(form.where())
          .contains(List.of(form.meaning()));
    }
  }

  @Test
  void everyCommandAndFieldHasAWord() {
    List<Token> meanings =
        Fenwick.vocabulary().forms().stream().map(SpokenForm::meaning).collect(Collectors.toList());
    for (Command command : Command.values()) {
      assertThat(meanings).contains(new Token.Order(command));
    }
    for (FieldId field : FieldId.values()) {
      assertThat(meanings).contains(new Token.Field(field));
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
}
