package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LayoutTest {

  @Test
  void ofLeavesNoGapAndNoOverlapAtAnyHeight() {
    for (int height = Layout.LEAST_HEIGHT; height <= 80; height++) {
      for (int fields = 0; fields <= 20; fields++) {
        Layout layout = Layout.of(120, height, Layout.Wants.of(fields));
        int title = layout.isTitled() ? 1 : 0;
        String where = height + " rows, " + fields + " fields";
        assertThat(layout.noticeRows()).as(where).isGreaterThanOrEqualTo(3);
        assertThat(layout.notices()).isEqualTo(layout.big() + BigGlyphs.ROWS * layout.bigScale());
        assertThat(layout.record()).isEqualTo(layout.notices() + layout.noticeRows() + title);
        assertThat(layout.recent()).isEqualTo(layout.record() + layout.recordRows());
        assertThat(layout.hints()).as(where).isEqualTo(layout.recent() + layout.recentRows());
        assertThat(layout.counts()).isEqualTo(layout.hints() + layout.hintRows());
        assertThat(layout.counts()).isEqualTo(height - 1);
      }
    }
  }

  @Test
  void ofShowsAllSixFieldsInTheLeastWindow() {
    assertThat(Layout.of(Layout.LEAST_WIDTH, Layout.LEAST_HEIGHT, Layout.Wants.of(6)).recordRows())
        .isEqualTo(6);
  }
}
