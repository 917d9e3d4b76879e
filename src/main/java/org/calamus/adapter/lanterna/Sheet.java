package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.TerminalPosition;
import com.googlecode.lanterna.TerminalTextUtils;
import com.googlecode.lanterna.graphics.TextGraphics;

/** The cells to draw on. What would fall outside is cut off. Used from the drawing thread only. */
final class Sheet {

  private final TextGraphics graphics;
  private final Cells cells;
  private final Strokes strokes;

  Sheet(TextGraphics graphics, Cells cells, Strokes strokes) {
    this.graphics = graphics;
    this.cells = cells;
    this.strokes = strokes;
  }

  int width() {
    return graphics.getSize().getColumns();
  }

  int height() {
    return graphics.getSize().getRows();
  }

  Strokes strokes() {
    return strokes;
  }

  /** Empties every cell. */
  void wipe() {
    graphics.fillRectangle(
        TerminalPosition.TOP_LEFT_CORNER, graphics.getSize(), cells.cell(' ', Ink.PLAIN));
  }

  /** Writes from a cell on; cut at the right edge. Gives the column behind the text. */
  int put(int column, int row, String text, Ink ink) {
    return put(column, row, text, width() - column, ink);
  }

  /** Writes from a cell on, cut with an ellipsis to a number of cells. Gives the next column. */
  int put(int column, int row, String text, int most, Ink ink) {
    if (row < 0 || row >= height() || most < 1) {
      return column;
    }
    String fitting = Prose.cut(Prose.printable(text), most, strokes.ellipsis());
    int next = column;
    for (char c : fitting.toCharArray()) {
      graphics.setCharacter(next, row, cells.cell(c, ink));
      next += TerminalTextUtils.isCharDoubleWidth(c) ? 2 : 1;
    }
    return next;
  }

  /** Writes so that the text ends one cell before the right edge. */
  void putRight(int row, String text, Ink ink) {
    int wide = Prose.cells(Prose.printable(text));
    put(Math.max(width() - 1 - wide, 0), row, text, ink);
  }

  /** A level line across, with a title in it where that is not empty. */
  void rule(int row, String title) {
    put(0, row, strokes.line(width()), Ink.PLAIN);
    if (!title.isEmpty()) {
      put(1, row, " " + title + " ", width() - 3, Ink.STRONG);
    }
  }

  /** An empty frame across the sheet with a title in its top line, which has an ink of its own. */
  void frame(int top, int bottom, String title, Ink titleInk) {
    Ink ink = Ink.STRONG;
    String line = strokes.line(width() - 2);
    put(0, top, strokes.topLeft() + line + strokes.topRight(), ink);
    put(2, top, " " + title + " ", width() - 4, titleInk);
    for (int row = top + 1; row < bottom; row++) {
      put(0, row, String.valueOf(strokes.upright()), ink);
      put(width() - 1, row, String.valueOf(strokes.upright()), ink);
    }
    put(0, bottom, strokes.bottomLeft() + line + strokes.bottomRight(), ink);
  }
}
