package org.calamus.acoustic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhrasesTest {

  private static final Phrases PHRASES =
      Phrases.among(Stream.of("wing", "wing_chord", "old_band", "old_band_number", "two"));

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          wing chord,         wing_chord
          wing,               wing
          wing chord two,     wing_chord two
          old band number,    old_band_number
          old band two,       old_band two
          two old band,       two old_band
          band number,        band number
          [unk],              [unk]
          """)
  void joinedTakesTheLongestPhraseFromTheLeft(String line, String joined) {
    assertThat(PHRASES.joined(line)).isEqualTo(joined);
  }

  @Test
  void partedGivesTheWordsOfAPhraseAndLeavesAllElse() {
    assertThat(PHRASES.parted("old_band_number")).containsExactly("old", "band", "number");
    assertThat(PHRASES.parted("wing")).containsExactly("wing");
    assertThat(PHRASES.parted("not_there")).containsExactly("not_there");
  }
}
