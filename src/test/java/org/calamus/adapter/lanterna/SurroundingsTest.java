package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurroundingsTest {

  @ParameterizedTest
  @CsvSource({
    "'', '', en_GB.UTF-8, true",
    "'', C.utf8, C, true",
    "C, '', en_GB.UTF-8, false",
    "'', '', POSIX, false",
    "'', '', de_DE.ISO-8859-1, false",
    "'', '', '', true"
  })
  void ofDrawsWithBlocksWhenTheLocaleIsUnicode(
      String all, String characters, String language, boolean isUnicode) {
    Surroundings found =
        Surroundings.of(Map.of("LC_ALL", all, "LC_CTYPE", characters, "LANG", language));
    assertThat(found.strokes()).isEqualTo(isUnicode ? Strokes.DRAWN : Strokes.TYPED);
  }

  @Test
  void ofTakesNoColourOnlyWhenItIsNotEmpty() {
    assertThat(Surroundings.of(Map.of("NO_COLOR", "")).palette()).isEqualTo(Ink.Palette.SIXTEEN);
    assertThat(Surroundings.of(Map.of("NO_COLOR", "0")).palette()).isEqualTo(Ink.Palette.NONE);
  }

  @ParameterizedTest
  @CsvSource({
    "vt100, NONE",
    "vt220, NONE",
    "vt102-nsgr, NONE",
    "linux-m, NONE",
    "xterm-mono, NONE",
    "xterm, SIXTEEN",
    "linux, SIXTEEN",
    "screen, SIXTEEN",
    "tmux-256color, SIXTEEN"
  })
  void ofTakesNoColourWhereTheTerminalHasNone(String term, Ink.Palette palette) {
    assertThat(Surroundings.of(Map.of("TERM", term)).palette()).isEqualTo(palette);
  }

  @ParameterizedTest
  @CsvSource({"100, 30, 100, 30", "'', '', 80, 24", "0, -1, 80, 24", "99999, x, 80, 24"})
  void ofTakesTheSizeWhenItMakesSense(String columns, String lines, int width, int height) {
    Surroundings found = Surroundings.of(Map.of("COLUMNS", columns, "LINES", lines));
    assertThat(found.columns()).isEqualTo(width);
    assertThat(found.rows()).isEqualTo(height);
  }
}
