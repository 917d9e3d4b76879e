package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrammarWholeTest {

  private static final Grammar.Whole DIGITS =
      new Grammar.Whole(Set.of("one", "two", "three"), Set.of(3, 5));

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          '',                          false
          one,                         true
          one two,                     true
          one two three,               false
          one two three one,           true
          one two three one two,       false
          one two three one two three, false
          one repeat,                  false
          """)
  void lacksWordsUntilTheAnswerIsWhole(String heard, boolean lacks) {
    List<String> words = Arrays.stream(heard.split(" ")).filter(w -> !w.isEmpty()).toList();

    assertThat(DIGITS.lacksWords(words)).isEqualTo(lacks);
  }

  @Test
  void lacksWordsNeverWhereAnswersHaveAnyLength() {
    assertThat(Grammar.Whole.any().lacksWords(List.of("one"))).isFalse();
  }
}
