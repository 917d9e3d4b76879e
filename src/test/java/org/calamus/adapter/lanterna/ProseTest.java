package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProseTest {

  @ParameterizedTest
  @CsvSource({
    "wing, 4, wing",
    "wing chord, 9, wing cho…",
    "wing chord, 6, wing…",
    "wing, 1, w",
    "鳥鳥鳥, 5, 鳥鳥…",
    "鳥鳥鳥, 4, 鳥…"
  })
  void cutEndsInTheEllipsisWhenTheTextIsTooWide(String text, int cells, String cut) {
    assertThat(Prose.cut(text, cells, "…")).isEqualTo(cut);
  }

  @Test
  void wrapBreaksAtBlanksAndBreaksWhatIsTooLongForALine() {
    assertThat(Prose.wrap("the wing is short", 8, 9, "…")).containsExactly("the wing", "is short");
    assertThat(Prose.wrap("2841-55601 is it", 6, 9, "…"))
        .containsExactly("2841-5", "5601", "is it");
    assertThat(Prose.wrap("鳥鳥", 1, 9, "…")).containsExactly("鳥", "鳥");
    assertThat(Prose.wrap("  ", 8, 9, "…")).isEmpty();
  }

  @Test
  void wrapEndsInTheEllipsisWhenLinesAreShort() {
    assertThat(Prose.wrap("the wing is short", 8, 1, "…")).containsExactly("the win…");
  }

  @Test
  void printableKeepsTheCursorWhereItIs() {
    assertThat(Prose.printable("a\u001b[2Jb\tc\r\nd😀")).isEqualTo("a?[2Jb c? d??");
  }
}
