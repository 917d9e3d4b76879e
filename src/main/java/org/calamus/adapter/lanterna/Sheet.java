package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.graphics.TextGraphics;
import java.util.EnumSet;

/** The cells to draw on. What would fall outside is cut off. Used from the drawing thread only. */
final class Sheet {

  private final TextGraphics graphics;
  private final Ink.Palette palette;
  private final Strokes strokes;

  Sheet(TextGraphics graphics, Ink.Palette palette, Strokes strokes) {
    this.graphics = graphics;
    this.palette = palette;
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
    use(Ink.PLAIN);
    graphics.fill(' ');
  }

  /** Writes from a cell on; cut at the right edge. Gives the column behind the text. */
  int put(int column, int row, String text, Ink ink) {
    return put(column, row, text, width() - column, ink);
  }

  /** Writes from a cell on, cut with an ellipsis to a number of cells. Gives the next column. */
  int put(int column, int row, String text, int cells, Ink ink) {
    if (row < 0 || row >= height() || cells < 1) {
      return column;
    }
    String fitting = Prose.cut(Prose.printable(text), cells, strokes.ellipsis());
    use(ink);
    graphics.putString(column, row, fitting, marks(ink));
    return column + Prose.cells(fitting);
  }

  /** Writes so that the text ends one cell before the right edge. */
  void putRight(int row, String text, Ink ink) {
    int cells = Prose.cells(Prose.printable(text));
    put(Math.max(width() - 1 - cells, 0), row, text, ink);
  }

  /** A level line across, with a title in it where that is not empty. */
  void rule(int row, String title) {
    put(0, row, strokes.line(width()), Ink.PLAIN);
    if (!title.isEmpty()) {
      put(1, row, " " + title + " ", width() - 3, Ink.STRONG);
    }
  }

  /** An empty frame across the sheet with a title in its top line. */
  void frame(int top, int bottom, String title, Ink ink) {
    String line = strokes.line(width() - 2);
    put(0, top, strokes.topLeft() + line + strokes.topRight(), ink);
    put(2, top, " " + title + " ", width() - 4, ink);
    for (int row = top + 1; row < bottom; row++) {
      put(0, row, String.valueOf(strokes.upright()), ink);
      put(width() - 1, row, String.valueOf(strokes.upright()), ink);
    }
    put(0, bottom, strokes.bottomLeft() + line + strokes.bottomRight(), ink);
  }

  private void use(Ink ink) {
    graphics.setForegroundColor(ink.colour(palette));
    graphics.setBackgroundColor(TextColor.ANSI.DEFAULT);
    graphics.clearModifiers();
  }

  private static EnumSet<SGR> marks(Ink ink) {
    return ink.marks();
  }
}
