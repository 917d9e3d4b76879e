package org.calamus.adapter.lanterna;

import java.util.List;
import org.calamus.core.dialogue.Page;
import org.calamus.core.dialogue.View;

/**
 * A page in the room of the record: its title with the rows that are seen, the rows, and the last
 * message. Top and bottom of the screen, with health, timer and hints, stay as they are.
 */
final class PagePart {

  private static final int TOP = Layout.LINE + 1;
  private static final int NUMBER_CELLS = 3;
  private static final int MARK_COLUMN = 5;
  private static final int TEXT_COLUMN = 9;
  private static final int BETWEEN = 3;

  /** With less room the few words that fit would say nothing. */
  private static final int LEAST_MORE_CELLS = 24;

  private final Sheet sheet;
  private final Page page;

  private PagePart(Sheet sheet, Page page) {
    this.sheet = sheet;
    this.page = page;
  }

  static void draw(Sheet sheet, Layout layout, View view, Page page) {
    int message = layout.hints() - 1;
    int rows = Math.max(message - TOP, 0);
    // where there is room for more than is left, the rows before are seen as well
    int first = Math.max(0, Math.min(page.first(), page.rows().size() - rows));
    int end = Math.min(first + rows, page.rows().size());
    PagePart part = new PagePart(sheet, page);
    part.drawTitle(first, end);
    int more = part.moreColumn();
    for (int i = first; i < end; i++) {
      part.drawRow(TOP + i - first, page.rows().get(i), more);
    }
    sheet.put(1, message, view.message(), Ink.STRONG);
    view.live().ifPresent(live -> sheet.putRight(message, " scale " + live, Ink.STRONG));
  }

  private void drawTitle(int first, int end) {
    sheet.rule(Layout.LINE, page.title());
    boolean isWhole = end - first == page.rows().size();
    if (!isWhole) {
      String seen = " rows " + (first + 1) + " to " + end + " of " + page.rows().size() + " ";
      sheet.putRight(Layout.LINE, seen, Ink.STRONG);
    }
  }

  /** Where there is room for more than the text: behind the longest of all rows. */
  private int moreColumn() {
    List<Page.Row> rows = page.rows();
    int longest =
        rows.stream()
            .filter(row -> !row.more().isEmpty())
            .mapToInt(row -> Prose.cells(Prose.printable(row.text())))
            .max()
            .orElse(0);
    return TEXT_COLUMN + longest + BETWEEN;
  }

  private void drawRow(int row, Page.Row shown, int more) {
    boolean isTitle = shown.look() == Page.Look.TITLE;
    boolean isWrong = shown.look() == Page.Look.WRONG;
    boolean isChosen = page.chosen().filter(shown.number()::equals).isPresent();
    String number = shown.number();
    if (isChosen) {
      sheet.put(0, row, ">", Ink.STRONG);
    }
    // a longer number begins at the same edge and reaches into the gap
    int column = Math.max(1, 1 + NUMBER_CELLS - Prose.cells(number));
    sheet.put(column, row, number, isChosen ? Ink.FILLED : Ink.STRONG);
    sheet.put(
        MARK_COLUMN, row, shown.mark(), NUMBER_CELLS, isWrong ? Ink.ALERT_FILLED : Ink.STRONG);
    Ink ink =
        switch (shown.look()) {
          case TITLE, HEAD, WRONG -> Ink.STRONG;
          case TEXT -> isChosen ? Ink.STRONG : Ink.PLAIN;
        };
    sheet.put(isTitle ? 1 : TEXT_COLUMN, row, shown.text(), ink);
    if (!shown.more().isEmpty() && more + LEAST_MORE_CELLS < sheet.width()) {
      sheet.put(more, row, shown.more(), sheet.width() - more - 1, Ink.PLAIN);
    }
  }
}
