package org.calamus.adapter.lanterna;

import java.util.List;
import org.calamus.core.dialogue.View;

/** The record so far and below it what can be chosen, the bird's history and the last records. */
final class RecordPart {

  private static final int WIDE = 100;
  private static final int STANDING_CELLS = 13;
  private static final int WAY_CELLS = 10;
  private static final int LABEL_COLUMN = 3;
  private static final int MOST_VALUE_CELLS = 36;
  private static final int CELL_LABEL_CELLS = 20;
  private static final int CELL_WAY_CELLS = 9;

  private RecordPart() {}

  static void draw(Sheet sheet, Layout layout, View view) {
    if (layout.isTitled()) {
      sheet.rule(layout.record() - 1, "Record");
    }
    drawRecord(sheet, layout, view.lines());
    new ChoicePart(view).draw(sheet, layout);
    int older = view.history().size() - Math.max(layout.historyRows() - 1, 0);
    String earlier = "Earlier captures" + (older > 0 ? ", " + older + " more not shown" : "");
    drawList(sheet, layout.history(), layout.historyRows(), earlier, view.history());
    drawList(sheet, layout.recent(), layout.recentRows(), "Last saved", view.recent());
  }

  private static void drawRecord(Sheet sheet, Layout layout, List<View.Line> lines) {
    int rows = layout.recordRows();
    int cells = rows * layout.recordColumns();
    boolean isWhole = lines.size() <= cells;
    Excerpt excerpt = Excerpt.of(lines, isWhole ? cells : cells - 1);
    int wide = sheet.width() / layout.recordColumns();
    for (int i = 0; i < excerpt.shown().size(); i++) {
      View.Line line = excerpt.shown().get(i);
      int row = layout.record() + i % rows;
      if (layout.recordColumns() == 1) {
        drawLine(sheet, row, line);
      } else {
        drawCell(sheet, i / rows * wide, row, wide, line);
      }
    }
    if (!isWhole && rows > 0) {
      int column = (layout.recordColumns() - 1) * wide + 1;
      String more = sheet.strokes().ellipsis() + " " + excerpt.more();
      sheet.put(column, layout.record() + rows - 1, more, wide - 2, Ink.PLAIN);
    }
  }

  /**
   * A field in half the width. Where the value leaves no room for the word of how it came, its
   * first letter stands at the end: {@code k} for keyed.
   */
  private static void drawCell(Sheet sheet, int left, int row, int wide, View.Line line) {
    boolean isTaken =
        line.standing() == View.Standing.TAKEN || line.standing() == View.Standing.CONFIRMED;
    Ink ink = ink(line.standing());
    int value = left + LABEL_COLUMN + CELL_LABEL_CELLS + 1;
    int end = left + wide - 1;
    sheet.put(left + 1, row, mark(line.standing()), ink);
    Ink text = line.standing() == View.Standing.ASKED ? Ink.STRONG : Ink.PLAIN;
    sheet.put(left + LABEL_COLUMN, row, line.label(), CELL_LABEL_CELLS, text);
    String note = isTaken ? line.way() : briefWord(line.standing());
    if (line.value().isEmpty()) {
      sheet.put(value, row, line.standing() == View.Standing.EMPTY ? "" : note, ink);
      return;
    }
    // code and words stand apart by two blanks, which would cost a letter here
    String brief = line.value().replaceAll(" +", " ");
    // of a value and what it was before never half is shown
    String now = line.now().replaceAll(" +", " ");
    int column = sheet.width() >= WIDE ? end - CELL_WAY_CELLS : end - Prose.cells(note);
    boolean hasRoom = value + Prose.cells(brief) < column;
    String shown = hasRoom ? note : initial(note, line.standing());
    int start = hasRoom ? column : end - 1;
    if (!hasRoom && !line.now().equals(line.value())) {
      // a value that is corrected moves up to its name before anything of it is left out
      int wanted = start - 1 - Prose.cells(brief);
      value =
          Math.min(value, Math.max(wanted, left + LABEL_COLUMN + Prose.cells(line.label()) + 1));
    }
    int cells = start - value - 1;
    sheet.put(value, row, Prose.cells(brief) > cells ? now : brief, cells, Ink.STRONG);
    sheet.put(start, row, shown, isTaken ? Ink.PLAIN : ink);
  }

  /** The first letter of how a value came; what is in question has its mark already. */
  private static String initial(String note, View.Standing standing) {
    return standing == View.Standing.IN_QUESTION || note.isEmpty() ? "" : note.substring(0, 1);
  }

  private static void drawLine(Sheet sheet, int row, View.Line line) {
    int labelCells = sheet.width() >= WIDE ? 28 : 20;
    int value = LABEL_COLUMN + labelCells + 1;
    // in a wide window the columns stay together, so that the eye keeps the line
    int way = Math.min(sheet.width() - STANDING_CELLS - WAY_CELLS, value + MOST_VALUE_CELLS);
    int standing = way + WAY_CELLS;
    Ink ink = ink(line.standing());
    Ink text = line.standing() == View.Standing.ASKED ? Ink.STRONG : Ink.PLAIN;
    sheet.put(1, row, mark(line.standing()), ink);
    sheet.put(LABEL_COLUMN, row, line.label(), labelCells, text);
    int cells = way - value - 1;
    String shown = Prose.cells(line.value()) > cells ? line.now() : line.value();
    sheet.put(value, row, shown, cells, Ink.STRONG);
    sheet.put(way, row, line.way(), WAY_CELLS - 1, Ink.PLAIN);
    sheet.put(standing, row, word(line.standing()), ink);
  }

  private static void drawList(Sheet sheet, int top, int rows, String title, List<String> lines) {
    if (rows == 0 || lines.isEmpty()) {
      return;
    }
    sheet.rule(top, title);
    int shown = Math.min(lines.size(), rows - 1);
    for (int i = 0; i < shown; i++) {
      sheet.put(LABEL_COLUMN, top + 1 + i, lines.get(i), sheet.width() - 4, Ink.PLAIN);
    }
  }

  private static String mark(View.Standing standing) {
    return switch (standing) {
      case EMPTY -> ".";
      case MISSING -> "!";
      case ASKED -> ">";
      case TAKEN -> "=";
      case CONFIRMED -> "*";
      case IN_QUESTION -> "?";
    };
  }

  private static String word(View.Standing standing) {
    return switch (standing) {
      case EMPTY -> "empty";
      case MISSING -> "missing";
      case ASKED -> "asked";
      case TAKEN -> "taken";
      case CONFIRMED -> "confirmed";
      case IN_QUESTION -> "in question";
    };
  }

  private static String briefWord(View.Standing standing) {
    return standing == View.Standing.IN_QUESTION ? "check" : word(standing);
  }

  private static Ink ink(View.Standing standing) {
    return switch (standing) {
      case EMPTY, TAKEN, MISSING -> Ink.PLAIN;
      case ASKED, CONFIRMED -> Ink.STRONG;
      case IN_QUESTION -> Ink.ALERT_FILLED;
    };
  }
}
