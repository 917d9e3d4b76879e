package org.calamus.adapter.lanterna;

import java.util.List;
import org.calamus.core.dialogue.View;

/** The record so far, one line a field, and the last saved records below it. */
final class RecordPart {

  private static final int WIDE = 100;
  private static final int STANDING_CELLS = 13;
  private static final int WAY_CELLS = 10;
  private static final int LABEL_COLUMN = 3;
  private static final int MOST_VALUE_CELLS = 36;

  private RecordPart() {}

  static void draw(Sheet sheet, Layout layout, View view) {
    if (layout.isTitled()) {
      sheet.rule(layout.record() - 1, "Record");
    }
    List<View.Line> lines = view.lines();
    int top = firstShown(lines, layout.recordRows());
    for (int i = 0; i < layout.recordRows(); i++) {
      drawLine(sheet, layout.record() + i, lines.get(top + i));
    }
    drawRecent(sheet, layout, view.recent());
  }

  /** Where not all fields fit, those around the one in work are shown. */
  private static int firstShown(List<View.Line> lines, int rows) {
    int focus = 0;
    for (int i = 0; i < lines.size(); i++) {
      View.Standing standing = lines.get(i).standing();
      if (standing == View.Standing.ASKED || standing == View.Standing.IN_QUESTION) {
        focus = i;
      }
    }
    return Math.max(0, Math.min(focus - rows / 2, lines.size() - rows));
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
    sheet.put(value, row, line.value(), way - value - 1, Ink.STRONG);
    sheet.put(way, row, line.way(), WAY_CELLS - 1, Ink.PLAIN);
    sheet.put(standing, row, word(line.standing()), ink);
  }

  private static void drawRecent(Sheet sheet, Layout layout, List<String> recent) {
    if (layout.recentRows() == 0 || recent.isEmpty()) {
      return;
    }
    sheet.rule(layout.recent(), "Last saved");
    int shown = Math.min(recent.size(), layout.recentRows() - 1);
    for (int i = 0; i < shown; i++) {
      sheet.put(LABEL_COLUMN, layout.recent() + 1 + i, recent.get(i), sheet.width() - 4, Ink.PLAIN);
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

  private static Ink ink(View.Standing standing) {
    return switch (standing) {
      case EMPTY, TAKEN, MISSING -> Ink.PLAIN;
      case ASKED, CONFIRMED -> Ink.STRONG;
      case IN_QUESTION -> Ink.ALERT;
    };
  }
}
