package org.calamus.adapter.lanterna;

import java.util.List;
import org.calamus.core.dialogue.View;

/**
 * The rows right below the large value: the message, the question in a frame, and a sentence for
 * each part that is down. Where rows are short the frame goes first. No sentence is cut where there
 * are as many rows as {@link #rows} asks for: its end says what to do.
 */
final class Notices {

  private static final int SIDE = 2;

  private final Sheet sheet;
  private final int first;
  private final int end;
  private final List<String> question;
  private final String message;
  private final List<View.Health> down;

  /**
   * Looks at what there is to say.
   *
   * @param first the first row
   * @param end the row behind the last
   */
  Notices(Sheet sheet, View view, int first, int end) {
    this.sheet = sheet;
    this.first = first;
    this.end = end;
    this.question = wrap(view.question().orElse(""), cells(), Math.max(end - first, 1));
    this.message = view.message();
    this.down = view.health().stream().filter(View.Health::isDown).toList();
  }

  /** The rows that all of it takes without a frame; at least 1. */
  static int rows(Sheet sheet, View view) {
    Notices all = new Notices(sheet, view, 0, sheet.height());
    int message = all.wrap(all.message, all.cells(), sheet.height()).size();
    return Math.max(message + all.question.size() + all.downRows(), 1);
  }

  private int cells() {
    return sheet.width() - 2 * SIDE;
  }

  private int downRows() {
    return down.stream().mapToInt(part -> sentence(part, sheet.height()).size()).sum();
  }

  private List<String> sentence(View.Health part, int most) {
    return wrap(part.part().word() + ": " + part.sentence(), cells() - 2, most);
  }

  /** Draws them and gives the first row that is left free. */
  int draw() {
    int rows = Math.max(end - first, 1);
    int wanted = Math.max(wrap(message, cells(), rows).size(), 1);
    boolean isFramed = !question.isEmpty() && wanted + question.size() + downRows() + 2 <= rows;
    int spare = rows - 1 - down.size() - question.size() - (isFramed ? 2 : 0);
    int row = first;
    if (!message.isBlank() || spare >= 0) {
      List<String> lines = wrap(message, cells(), 1 + Math.max(spare, 0));
      for (String line : lines) {
        sheet.put(SIDE, row++, line, Ink.STRONG);
      }
      boolean isBlankNeeded = message.isBlank() && downRows() + question.size() >= rows;
      spare -= Math.max(lines.size() - 1, 0);
      row = isBlankNeeded ? row : Math.max(row, first + 1);
      spare += isBlankNeeded ? 1 : 0;
    }
    row = isFramed ? framed(row) : unframed(row);
    return downs(row, spare);
  }

  private int framed(int row) {
    if (question.isEmpty()) {
      return row;
    }
    int bottom = row + question.size() + 1;
    sheet.frame(row, bottom, View.Mode.CHECK.name(), Ink.ALERT_FILLED);
    for (int i = 0; i < question.size(); i++) {
      sheet.put(SIDE, row + 1 + i, question.get(i), Ink.STRONG);
    }
    return bottom + 1;
  }

  private int unframed(int top) {
    int row = top;
    for (String line : question) {
      if (row < end) {
        sheet.put(0, row, "?", Ink.ALERT_FILLED);
        sheet.put(SIDE, row++, line, Ink.STRONG);
      }
    }
    return row;
  }

  private int downs(int top, int spareRows) {
    int row = top;
    int spare = Math.max(spareRows, 0);
    for (View.Health part : down) {
      List<String> lines = sentence(part, 1 + spare);
      spare -= lines.size() - 1;
      if (row < end) {
        sheet.put(SIDE - 1, row, " X ", Ink.ALERT_FILLED);
      }
      for (String line : lines) {
        if (row < end) {
          sheet.put(SIDE + 2, row++, line, Ink.STRONG);
        }
      }
    }
    return row;
  }

  private List<String> wrap(String text, int cells, int most) {
    return Prose.wrap(Prose.printable(text), cells, most, sheet.strokes().ellipsis());
  }
}
