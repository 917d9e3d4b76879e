package org.calamus.adapter.lanterna;

import java.util.ArrayList;
import java.util.List;
import org.calamus.core.dialogue.View;

/**
 * The rows right below the large value: the message, the question in a frame, and one line for each
 * part that is down. Where rows are short the frame goes first; where there are more than enough,
 * long sentences wrap onto them.
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
    int cells = sheet.width() - 2 * SIDE;
    this.question = wrap(view.question().orElse(""), cells, Math.max(end - first, 1));
    this.message = view.message();
    this.down = view.health().stream().filter(View.Health::isDown).toList();
  }

  /** The rows that all of it takes without a frame, long sentences about parts cut; at least 1. */
  static int rows(Sheet sheet, View view) {
    int cells = sheet.width() - 2 * SIDE;
    String ellipsis = sheet.strokes().ellipsis();
    int rows = 0;
    for (String text : List.of(view.message(), view.question().orElse(""))) {
      rows += Prose.wrap(Prose.printable(text), cells, sheet.height(), ellipsis).size();
    }
    long down = view.health().stream().filter(View.Health::isDown).count();
    return Math.max(rows + (int) down, 1);
  }

  /** Draws them and gives the first row that is left free. */
  int draw() {
    int spare = end - first - 1 - down.size() - question.size();
    boolean isFramed = !question.isEmpty() && spare >= 2;
    spare = isFramed ? spare - 2 : spare;
    int row = first;
    if (!message.isBlank() || spare >= 0) {
      List<String> lines = wrap(message, sheet.width() - 2 * SIDE, 1 + Math.max(spare, 0));
      for (String line : lines) {
        sheet.put(SIDE, row++, line, Ink.STRONG);
      }
      spare -= Math.max(lines.size() - 1, 0);
      row = Math.max(row, first + 1);
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
      String text = part.part().word() + ": " + part.sentence();
      List<String> lines = new ArrayList<>(wrap(text, sheet.width() - 2 * SIDE - 2, 1 + spare));
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
