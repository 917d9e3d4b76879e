package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LayoutTest {

  @Test
  void ofLeavesNoGapAndNoOverlapAtAnyHeight() {
    for (int height = Layout.LEAST_HEIGHT; height <= 80; height++) {
      for (int fields = 0; fields <= 30; fields++) {
        for (Layout.Wants wants : wants(fields)) {
          for (int width : List.of(60, 80, 120)) {
            checkRows(Layout.of(width, height, wants), height, width + "x" + height + " " + wants);
          }
        }
      }
    }
  }

  private static List<Layout.Wants> wants(int fields) {
    int least = Math.min(fields, 5);
    return List.of(
        Layout.Wants.of(fields),
        new Layout.Wants(fields, least, 6, 0, 0),
        new Layout.Wants(fields, least, 12, 0, 0),
        new Layout.Wants(fields, least, 1, 0, 2),
        new Layout.Wants(fields, least, 2, 8, 2, 2, false, 9, 10),
        new Layout.Wants(fields, least, 1, 40, 20, 10, false, 0, 6),
        new Layout.Wants(fields, least, 1, 8, 2, 2, false, 9, 0),
        new Layout.Wants(fields, least, 4, 40, 40, 10, false, 5, 0),
        new Layout.Wants(fields, least, 4, 40, 40, 10, true, 5, 2),
        new Layout.Wants(fields, least, 9, 28, 10, 7, true, 0, 0),
        new Layout.Wants(fields, 0, 1, 37, 13, 13, false, 0, 0),
        new Layout.Wants(fields, 0, 3, 40, 14, 14, false, 9, 0));
  }

  private static void checkRows(Layout layout, int height, String where) {
    int title = layout.isTitled() ? 1 : 0;
    assertThat(layout.noticeRows()).as(where).isGreaterThanOrEqualTo(1);
    assertThat(layout.notices()).isEqualTo(layout.big() + BigGlyphs.ROWS * layout.bigScale());
    int above = layout.isTall() ? 0 : layout.pictureRows();
    int below = layout.isTall() ? layout.pictureRows() : 0;
    assertThat(layout.record()).isEqualTo(layout.notices() + layout.noticeRows() + above + title);
    int behind = layout.isTall() ? layout.history() + layout.historyRows() : layout.notices();
    assertThat(layout.pictures())
        .isEqualTo(layout.isTall() ? behind : behind + layout.noticeRows());
    assertThat(layout.recordRows()).as(where).isNotNegative();
    assertThat(layout.choices()).isEqualTo(layout.record() + layout.recordRows());
    assertThat(layout.history()).isEqualTo(layout.choices() + layout.choiceRows());
    assertThat(layout.recent()).isEqualTo(layout.history() + layout.historyRows() + below);
    assertThat(layout.hints()).as(where).isEqualTo(layout.recent() + layout.recentRows());
    assertThat(layout.counts()).isEqualTo(layout.hints() + layout.hintRows());
    assertThat(layout.counts()).isEqualTo(height - 1);
  }

  @ParameterizedTest
  @CsvSource({"80, 24, 4", "120, 40, 6"})
  void ofKeepsTheLargeValueAllMessagesAndTheFieldAskedWhateverCodesThereAre(
      int width, int height, int columns) {
    for (int codes = 1; codes <= 28; codes++) {
      for (int fields = 6; fields <= 30; fields++) {
        for (int notices = 1; notices <= 4; notices++) {
          int fewest = (codes + columns - 1) / columns;
          Layout.Wants wants =
              new Layout.Wants(fields, 5, notices, codes, codes, fewest, false, 0, 0);
          Layout layout = Layout.of(width, height, wants);
          assertThat(layout.bigScale()).as(wants.toString()).isPositive();
          assertThat(layout.choiceRows() - 1).as(wants.toString()).isBetween(fewest, codes);
          assertThat(layout.recordRows()).as(wants.toString()).isPositive();
          assertThat(layout.noticeRows()).as(wants.toString()).isGreaterThanOrEqualTo(notices);
        }
      }
    }
  }

  @Test
  void ofKeepsFiveFieldsBesideTheLongestListWhereThereIsLittleToSay() {
    Layout layout = Layout.of(80, 24, new Layout.Wants(16, 5, 2, 28, 10, 7, false, 0, 0));
    assertThat(layout.recordRows() * layout.recordColumns()).isGreaterThanOrEqualTo(5);
    assertThat(layout.choiceRows()).isEqualTo(1 + 7);
  }

  @Test
  void ofLeavesTheListOutForAQuestionThatNeedsTheRoomAndKeepsTheValueLarge() {
    for (int notices = 5; notices <= 12; notices++) {
      Layout layout = Layout.of(80, 24, new Layout.Wants(16, 5, notices, 28, 10, 7, true, 0, 0));
      assertThat(layout.bigScale()).as(notices + " rows").isEqualTo(1);
      assertThat(layout.choiceRows()).isZero();
      assertThat(layout.noticeRows()).isGreaterThanOrEqualTo(notices);
      assertThat(layout.recordRows()).isPositive();
    }
  }

  @Test
  void ofGivesTheMenuAllTheRowsItNeedsInTheUsualWindow() {
    Layout layout = Layout.of(80, 24, new Layout.Wants(16, 0, 1, 37, 13, 13, false, 0, 0));
    assertThat(layout.choiceRows()).isEqualTo(14);
    assertThat(layout.bigScale()).isZero();
  }

  @Test
  void ofMovesNothingWhenAMessageOrAQuestionComes() {
    for (int fields = 6; fields <= 30; fields++) {
      Layout quiet = Layout.of(80, 24, Layout.Wants.of(fields));
      assertThat(Layout.of(80, 24, new Layout.Wants(fields, 5, 3, 0, 0))).isEqualTo(quiet);
    }
  }

  @ParameterizedTest
  @CsvSource({"80, 24", "120, 40"})
  void ofMovesNoFieldWhenAPictureComes(int width, int height) {
    for (int fields = 6; fields <= 20; fields++) {
      for (int pictures : height == 24 ? List.of(1, 2) : List.of(2, 5, 10)) {
        Layout plain = Layout.of(width, height, Layout.Wants.of(fields));
        Layout drawn = Layout.of(width, height, new Layout.Wants(fields, 5, 1, 0, pictures));
        assertThat(drawn.pictureRows()).as(fields + " fields").isPositive();
        assertThat(drawn.recordRows()).isEqualTo(plain.recordRows());
        assertThat(drawn.recordColumns()).isEqualTo(plain.recordColumns());
        if (height == 24) {
          assertThat(drawn.record()).isEqualTo(plain.record());
        }
      }
    }
  }

  @Test
  void ofPutsManyFieldsInTwoColumnsAndShowsThirtyOfThemInALargeWindow() {
    assertThat(Layout.of(80, 24, Layout.Wants.of(6)).recordColumns()).isEqualTo(1);
    assertThat(Layout.of(80, 24, Layout.Wants.of(16)).recordColumns()).isEqualTo(2);
    assertThat(Layout.of(80, 24, Layout.Wants.of(16)).recordRows()).isEqualTo(8);
    assertThat(Layout.of(120, 40, Layout.Wants.of(30)).recordRows()).isEqualTo(15);
  }

  @Test
  void ofGivesHistoryThreeLinesInTheUsualWindowAndMoreInALargeOne() {
    Layout.Wants wants = new Layout.Wants(16, 5, 1, 9, 0);
    assertThat(Layout.of(80, 24, wants).historyRows()).isEqualTo(1 + 3);
    assertThat(Layout.of(120, 40, wants).historyRows()).isEqualTo(1 + 6);
  }

  @Test
  void ofShowsAllSixFieldsInTheLeastWindow() {
    Layout.Wants six = Layout.Wants.of(6);
    assertThat(Layout.of(Layout.LEAST_WIDTH, Layout.LEAST_HEIGHT, six).recordRows()).isEqualTo(6);
  }
}
