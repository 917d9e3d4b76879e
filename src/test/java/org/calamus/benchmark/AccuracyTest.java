package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sums of what was heard. */
class AccuracyTest {

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # said,            heard,                errors
          six five,          six five,             0
          six five,          six,                  1
          six five,          six nine,             1
          six five,          six five nine,        1
          six five,          five six,             2
          six five,          '',                   2
          two two two,       two two,              1
          juvenal plumage,   juvenile plumage,     0
          quebec x-ray,      quebec x ray,         0
          """)
  void errorsCountsWordsToChange(String said, String heard, int errors) {
    assertThat(Accuracy.errors(Accuracy.words(said), Accuracy.words(heard))).isEqualTo(errors);
  }

  @Test
  void addSumsWordsUtterancesAndVerdicts() {
    Accuracy sum = new Accuracy();

    sum.add("six five", new Outcome("six five", Verdict.RIGHT));
    sum.add("six five", new Outcome("six nine", Verdict.WRONG));
    sum.add("wing", new Outcome("", Verdict.AGAIN));

    assertThat(sum.wordErrorRate()).isCloseTo(40, within(1e-9));
    assertThat(sum.utterances()).isEqualTo(3);
    assertThat(sum.wholeRight()).isEqualTo(1);
    assertThat(sum.of(Verdict.WRONG)).isEqualTo(1);
  }
}
