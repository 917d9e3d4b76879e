package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;

class GrammarsTest {

  private final Grammars grammars = new Grammars(Fenwick.vocabulary());

  private List<String> asking(FieldId field) {
    return grammars.asking(Optional.of(Fenwick.form().spec(field))).phrases();
  }

  @Test
  void everyGrammarHearsTheUnknownAndEveryCommand() {
    for (FieldSpec spec : Fenwick.form().fields()) {
      for (Grammar grammar :
          List.of(
              grammars.asking(Optional.of(spec)),
              grammars.questioning(Optional.of(spec)),
              grammars.asking(Optional.empty()))) {
        assertThat(grammar.phrases())
            .as(grammar.name())
            .contains(Word.UNKNOWN, "affirm", "negative", "correction", "say again", "save record");
      }
    }
  }

  @Test
  void leavesOutWordsThatSoundLikeNumbersWhileANumberIsAsked() {
    assertThat(asking(FieldId.WING)).doesNotContain("age", "sex").contains("wing", "weight");
    assertThat(asking(FieldId.AGE)).contains("age", "sex");
  }

  @Test
  void hearsTheSpellingAlphabetOnlyWhileASpeciesIsAsked() {
    assertThat(asking(FieldId.SPECIES)).contains("alpha", "zulu");
    assertThat(asking(FieldId.WING)).doesNotContain("alpha", "zulu");
  }

  @Test
  void expectsWhatIsAskedMoreThanTheRest() {
    assertThat(Collections.frequency(asking(FieldId.BAND), "two")).isGreaterThan(1);
    assertThat(Collections.frequency(asking(FieldId.BAND), "song sparrow")).isEqualTo(1);
    assertThat(Collections.frequency(asking(FieldId.SPECIES), "song sparrow")).isGreaterThan(1);
  }

  @Test
  void expectsAnAnswerWhileAQuestionIsOpen() {
    Optional<FieldSpec> wing = Optional.of(Fenwick.form().spec(FieldId.WING));
    Grammar questioning = grammars.questioning(wing);
    assertThat(Collections.frequency(questioning.phrases(), "affirm")).isGreaterThan(1);
    assertThat(Collections.frequency(asking(FieldId.WING), "affirm")).isEqualTo(1);
    assertThat(questioning.name()).isNotEqualTo(grammars.asking(wing).name());
  }
}
