package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;
import org.calamus.support.Fenwick;
import org.calamus.support.WholeRecord;
import org.junit.jupiter.api.Test;

class GrammarsTest {

  private static final Grammars GRAMMARS = new Grammars(Fenwick.vocabulary());

  @Test
  void everyGrammarHearsTheUnknownAndEveryCommand() {
    for (FieldSpec spec : Fenwick.form().fields()) {
      for (Grammar grammar :
          List.of(
              GRAMMARS.asking(Optional.of(spec)),
              GRAMMARS.questioning(Optional.of(spec)),
              GRAMMARS.asking(Optional.empty()))) {
        assertThat(grammar.phrases())
            .as(grammar.name())
            .contains(Word.UNKNOWN, "affirm", "negative", "correction", "say again", "save record");
      }
    }
  }

  @Test
  void everyGrammarHearsTheNameOfEveryField() {
    for (FieldSpec spec : Fenwick.form().fields()) {
      assertThat(GRAMMARS.asking(Optional.of(spec)).phrases())
          .as(spec.label())
          .contains("band", "species", "year class", "gender", "wing", "weight");
    }
  }

  @Test
  void askingForAMeasurementLeavesOutWhatSoundsLikeANumber() {
    assertThat(asking(FieldId.WING))
        .noneMatch(p -> List.of(p.split(" ")).contains("winged"))
        .doesNotContain("sex", "age", "tail", "hermit thrush", "whiskey")
        .contains(
            "sex unknown", "female", "weight", "correction", "save record", "okay", Word.UNKNOWN);
  }

  @Test
  void askingForTheBandListensForSingleDigitsOnly() {
    assertThat(asking(FieldId.BAND)).contains("nine", "oh").doesNotContain("ninety", "nineteen");
  }

  @Test
  void askingForAMeasurementMakesPairsOfItsWordsLikely() {
    assertThat(asking(FieldId.MASS))
        .contains("nine two", "ninety two", "two point", "point three", "nineteen point")
        .contains("correction nine", "negative nine", "weight two")
        .doesNotContain("ninety zero", "ninety oh", "twenty thirty", "correction point");
  }

  @Test
  void askingForASpeciesListensForNamesAndSpelling() {
    assertThat(asking(FieldId.SPECIES)).contains("hermit thrush", "whiskey", "affirm");
    assertThat(asking(FieldId.AGE)).doesNotContain("whiskey");
  }

  @Test
  void askingForAScoreMakesItsDigitsLikelyAndLeavesOutWhatSoundsLikeThem() {
    Optional<FieldSpec> fat = Optional.of(WholeRecord.form(CodeSet.LABORATORY).spec(FieldId.FAT));
    assertThat(count(GRAMMARS.asking(fat), "six")).isEqualTo(8);
    assertThat(GRAMMARS.asking(fat).phrases())
        .contains("none", "skull", "how sexed", "how aged")
        .doesNotContain("sex", "age", "hermit thrush");
    assertThat(count(GRAMMARS.asking(fat), "ninety")).isEqualTo(1);
  }

  @Test
  void askingForASizeListensForLettersAndForTheCriteriaTheirWords() {
    Form whole = WholeRecord.form(CodeSet.LABORATORY);
    assertThat(GRAMMARS.asking(Optional.of(whole.spec(FieldId.BAND_SIZE))).phrases())
        .contains("bravo", "nine tall");
    assertThat(count(GRAMMARS.asking(Optional.of(whole.spec(FieldId.HOW_AGED))), "skull"))
        .isEqualTo(8);
  }

  @Test
  void askingForATimeMakesHoursAndMinutesLikely() {
    Form whole = WholeRecord.form(CodeSet.LABORATORY);
    assertThat(GRAMMARS.asking(Optional.of(whole.spec(FieldId.TIME))).phrases())
        .contains("eight forty", "fourteen thirty", "forty five")
        .doesNotContain("forty zero");
  }

  @Test
  void askingForADateListensForMonthsAndNoOtherFieldDoes() {
    Form whole = WholeRecord.form(CodeSet.LABORATORY);
    Grammar date = GRAMMARS.asking(Optional.of(whole.spec(FieldId.DATE)));
    assertThat(count(date, "june")).isEqualTo(8);
    assertThat(count(date, "november")).isEqualTo(8);
    assertThat(date.phrases())
        .contains("six june", "sixteen june", "sixteenth of june", "june twenty", "twenty first")
        .doesNotContain("hundred", "point", "whiskey", "hermit thrush", "first second");
    for (FieldSpec field : whole.fields()) {
      if (field.id() != FieldId.DATE) {
        assertThat(GRAMMARS.asking(Optional.of(field)).phrases())
            .as(field.id().name())
            .contains("capture date")
            .doesNotContain("june", "of june", "sixteenth");
      }
    }
    assertThat(GRAMMARS.asking(Optional.empty()).phrases()).doesNotContain("june", "november");
  }

  @Test
  void askingForAnAgeListensForTheLettersOfItsCodesOnly() {
    assertThat(asking(FieldId.AGE)).contains("alpha", "hotel", "yankee").doesNotContain("bravo");
    assertThat(asking(FieldId.SEX)).contains("mike", "foxtrot").doesNotContain("hotel");
  }

  @Test
  void askingForANetListensForNumbersAndForAScoreForItsDigits() {
    Form whole = WholeRecord.form(CodeSet.LABORATORY);
    assertThat(GRAMMARS.asking(Optional.of(whole.spec(FieldId.NET))).phrases())
        .contains("twelve", "twenty one", "one two");
    Grammar skull = GRAMMARS.asking(Optional.of(whole.spec(FieldId.SKULL)));
    assertThat(count(skull, "twelve")).isEqualTo(1);
    assertThat(skull.phrases()).contains("weight twenty", "eight point", "point six");
    assertThat(count(skull, "six")).isEqualTo(8);
    assertThat(count(skull, "nine")).isEqualTo(1);
  }

  @Test
  void makesAScoreAndItsNameLikelyWhileAMeasurementIsAsked() {
    assertThat(
            GRAMMARS
                .asking(Optional.of(WholeRecord.form(CodeSet.LABORATORY).spec(FieldId.WING)))
                .phrases())
        .contains("fat two", "body moult one", "brood patch none", "hundred and")
        .doesNotContain("hundred hours");
  }

  @Test
  void listensForOneOfTwoSpellingsThatSoundAlike() {
    Form whole = WholeRecord.form(CodeSet.LABORATORY);
    for (FieldSpec spec : whole.fields()) {
      assertThat(GRAMMARS.asking(Optional.of(spec)).phrases())
          .as(spec.label())
          .contains("body moult")
          .doesNotContain("body molt", "x ray", "release");
    }
    assertThat(Fenwick.vocabulary().words()).contains("moult").doesNotContain("molt", "alfa");
  }

  @Test
  void leavesOutTheTailWhileANumberIsAskedSinceTwoIsHeardForIt() {
    assertThat(asking(FieldId.WING)).doesNotContain("tail").contains("rectrices", "fat", "net");
    assertThat(asking(FieldId.SPECIES)).contains("tail");
  }

  @Test
  void questioningMakesItsAnswersLikely() {
    Optional<FieldSpec> wing = Optional.of(Fenwick.form().spec(FieldId.WING));
    assertThat(count(GRAMMARS.questioning(wing), "affirm")).isEqualTo(8);
    assertThat(count(GRAMMARS.asking(wing), "affirm")).isEqualTo(1);
    assertThat(GRAMMARS.questioning(wing).name()).isNotEqualTo(GRAMMARS.asking(wing).name());
  }

  private static List<String> asking(FieldId field) {
    return GRAMMARS.asking(Optional.of(Fenwick.form().spec(field))).phrases();
  }

  private static int count(Grammar grammar, String phrase) {
    return Collections.frequency(grammar.phrases(), phrase);
  }
}
