package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class BigGlyphsTest {

  private static final String ALL = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ.-+*/? ";

  @Test
  void rowsDrawsEveryCharacterDifferently() {
    Set<List<String>> glyphs =
        ALL.chars()
            .filter(c -> c != ' ')
            .mapToObj(c -> BigGlyphs.rows(String.valueOf((char) c), 80, 1, '#').orElseThrow())
            .collect(Collectors.toSet());
    assertThat(glyphs).hasSize(ALL.length() - 1);
  }

  @Test
  void rowsDrawsANumberWithItsPoint() {
    assertThat(BigGlyphs.rows("22.3", 80, 1, '#'))
        .hasValue(
            List.of(
                "######  ######      ######",
                "    ##      ##          ##",
                "######  ######       #####",
                "##      ##              ##",
                "######  ######  ##  ######"));
  }

  @Test
  void rowsFitsABandNumberIntoEightyColumns() {
    List<String> rows = BigGlyphs.rows("2841-55601", 77, 2, '#').orElseThrow();
    assertThat(rows).hasSize(BigGlyphs.ROWS).allMatch(row -> row.length() <= 76);
  }

  @Test
  void rowsDoublesWidthAndHeightWhenThereIsRoom() {
    assertThat(BigGlyphs.rows("-", 80, 2, '#'))
        .hasValue(List.of("", "", "", "", "########", "########", "", "", "", ""));
  }

  @Test
  void rowsTakesSmallLettersForCapitals() {
    assertThat(BigGlyphs.rows("wbnu", 80, 1, '#')).isEqualTo(BigGlyphs.rows("WBNU", 80, 1, '#'));
  }

  @Test
  void rowsGivesNothingWhenTheTextIsTooWideOrUnknownOrBlank() {
    assertThat(BigGlyphs.rows("2841-55601", 75, 1, '#')).isEmpty();
    assertThat(BigGlyphs.rows("½", 80, 1, '#')).isEmpty();
    assertThat(BigGlyphs.rows("", 80, 1, '#')).isEmpty();
    assertThat(BigGlyphs.rows(" ", 80, 1, '#')).isEmpty();
  }
}
