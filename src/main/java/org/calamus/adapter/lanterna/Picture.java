package org.calamus.adapter.lanterna;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.View;

/** Draws a whole view onto a sheet. Knows where things stand, never what they mean. */
final class Picture {

  static final String TOO_SMALL = "This window is too small: make it at least 80 by 24";

  private static final int SIDE = 2;
  private static final int LEAST_FIELDS = 5;

  private Picture() {}

  static void draw(Sheet sheet, View view) {
    sheet.wipe();
    if (Layout.isTooSmall(sheet.width(), sheet.height())) {
      drawTooSmall(sheet);
      return;
    }
    Layout layout = Layout.of(sheet.width(), sheet.height(), wants(sheet, view));
    TopPart.draw(sheet, view);
    BottomPart.draw(sheet, layout, view);
    if (view.page().isPresent()) {
      PagePart.draw(sheet, layout, view, view.page().get());
    } else if (view.cautions().isEmpty()) {
      drawAsked(sheet, layout, view, layout.bigScale() == 0 ? view.big() : "");
      if (layout.bigScale() > 0) {
        drawBig(sheet, layout, view.big());
      }
      new Notices(sheet, view, layout.notices(), layout.notices() + layout.noticeRows()).draw();
      PicturePart.draw(sheet, layout, view);
      RecordPart.draw(sheet, layout, view);
    } else {
      drawAsked(sheet, layout, view, view.big());
      drawStart(sheet, layout, view);
    }
  }

  private static Layout.Wants wants(Sheet sheet, View view) {
    int fields = view.lines().size();
    if (!view.cautions().isEmpty()) {
      return Layout.Wants.of(fields);
    }
    ChoicePart choices = new ChoicePart(view);
    int choiceRows = choices.rows(sheet.strokes(), sheet.width());
    // the menu is read for the words of the commands, which must be whole
    int fewest =
        view.hasCommands() ? choiceRows : choices.fewestRows(sheet.strokes(), sheet.width());
    return new Layout.Wants(
        fields,
        // who looks for a command does not look at the record
        view.hasCommands() ? 0 : Math.min(fields, LEAST_FIELDS),
        Notices.rows(sheet, view),
        choices.count(),
        choiceRows,
        fewest,
        view.question().isPresent() && !view.hasCommands(),
        view.history().size(),
        new PicturePart(view.pictures(), sheet.width()).rows(Layout.isTall(sheet.height())));
  }

  /** Draws the level bar alone, where the rest of the view is the one drawn before. */
  static void drawLevel(Sheet sheet, View view) {
    if (!Layout.isTooSmall(sheet.width(), sheet.height())) {
      TopPart.drawLevel(sheet, view.decibels());
    }
  }

  private static void drawTooSmall(Sheet sheet) {
    List<String> lines =
        Prose.wrap(TOO_SMALL, sheet.width(), sheet.height(), sheet.strokes().ellipsis());
    for (int row = 0; row < lines.size(); row++) {
      sheet.put(0, row, lines.get(row), Ink.STRONG);
    }
  }

  private static void drawAsked(Sheet sheet, Layout layout, View view, String value) {
    String asked = view.asked().isBlank() ? "" : "> " + view.asked();
    int column = sheet.put(1, layout.asked(), asked, Ink.STRONG) + 3;
    if (!value.isBlank()) {
      column = sheet.put(column - 1, layout.asked(), " " + value + " ", Ink.FILLED) + 1;
    }
    // the large value may be of the field before the one that is asked: say so beside it
    sheet.put(column, layout.asked(), view.bigOf(), Ink.PLAIN);
    view.live().ifPresent(live -> sheet.putRight(layout.asked(), " scale " + live, Ink.STRONG));
  }

  private static void drawBig(Sheet sheet, Layout layout, String big) {
    int cells = sheet.width() - 2 * SIDE + 1;
    Optional<List<String>> glyphs =
        BigGlyphs.rows(big, cells, layout.bigScale(), sheet.strokes().block());
    int rows = layout.notices() - layout.big();
    List<String> lines =
        glyphs.orElseGet(
            () -> Prose.wrap(Prose.printable(big), cells, rows, sheet.strokes().ellipsis()));
    int first = layout.big() + (rows - lines.size()) / 2;
    for (int i = 0; i < lines.size(); i++) {
      sheet.put(SIDE, first + i, lines.get(i), Ink.STRONG);
    }
  }

  /** The cautions, in a panel below the question and over the record where that is needed. */
  private static void drawStart(Sheet sheet, Layout layout, View view) {
    int recordTop = layout.record() - (layout.isTitled() ? 1 : 0);
    int top = new Notices(sheet, view, layout.big(), recordTop - 3).draw();
    List<String> lines = new ArrayList<>();
    String ellipsis = sheet.strokes().ellipsis();
    for (String caution : view.cautions()) {
      lines.addAll(
          Prose.wrap(Prose.printable(caution), sheet.width() - 2 * SIDE, sheet.height(), ellipsis));
    }
    int room = layout.hints() - top - 2;
    if (lines.size() > room) {
      lines = new ArrayList<>(lines.subList(0, Math.max(room - 1, 0)));
      lines.add(ellipsis);
    }
    int bottom = top + lines.size() + 1;
    if (bottom < recordTop) {
      RecordPart.draw(sheet, layout, view);
    }
    sheet.frame(top, bottom, "BEFORE YOU START", Ink.STRONG);
    for (int i = 0; i < lines.size(); i++) {
      sheet.put(SIDE, top + 1 + i, lines.get(i), Ink.PLAIN);
    }
  }
}
