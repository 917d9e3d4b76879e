package org.calamus.adapter.lanterna;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.calamus.core.dialogue.View;

/**
 * What can be chosen by number, in as many columns as it needs: the keypad's menu, or the codes of
 * the field that is asked. Read down the columns.
 */
final class ChoicePart {

  private static final int LEFT = 1;
  private static final int BETWEEN = 2;

  /** Longer meanings are cut before they make the list longer; most are far shorter. */
  private static final int MOST_CELLS = 31;

  /** The least that tells one meaning from another. */
  private static final int LEAST_CELLS = 14;

  private static final String PART = "; ";

  private final View view;
  private final List<View.Choice> choices;
  private final int keyCells;

  ChoicePart(View view) {
    this.view = view;
    // a code without a number can be said only: it is not for the keypad
    this.choices = view.choices().stream().filter(c -> !c.keys().isBlank()).toList();
    this.keyCells = choices.stream().mapToInt(c -> Prose.cells(c.keys())).max().orElse(0);
  }

  /** How many there are. */
  int count() {
    return choices.size();
  }

  /** The rows, without the title, in which nothing is cut; 0 where there is nothing to choose. */
  int rows(Strokes strokes, int width) {
    for (int rows = 1; rows <= choices.size(); rows++) {
      List<Integer> wide = columns(strokes, rows);
      if (total(wide, Integer.MAX_VALUE) <= width - 2 * LEFT) {
        return rows;
      }
    }
    return choices.size();
  }

  /** The rows, without the title, in as many columns as leave room for a word or two each. */
  int fewestRows(Strokes strokes, int width) {
    int cells = keyCells + 1 + LEAST_CELLS + BETWEEN;
    int columns = Math.max((width - 2 * LEFT + BETWEEN) / cells, 1);
    return Math.min((choices.size() + columns - 1) / columns, rows(strokes, width));
  }

  void draw(Sheet sheet, Layout layout) {
    if (layout.choiceRows() == 0 || choices.isEmpty()) {
      return;
    }
    sheet.rule(layout.choices(), view.hasCommands() ? "Menu" : "Number, then Enter");
    int rows = layout.choiceRows() - 1;
    List<Integer> wide = columns(sheet.strokes(), rows);
    int cap = Collections.max(wide);
    while (cap > keyCells + BETWEEN && total(wide, cap) > sheet.width() - 2 * LEFT) {
      cap--;
    }
    int column = LEFT;
    for (int i = 0; i < wide.size(); i++) {
      int cells = Math.min(wide.get(i), cap);
      for (int row = 0; row < rows && i * rows + row < choices.size(); row++) {
        drawChoice(sheet, column, layout.choices() + 1 + row, i * rows + row, cells);
      }
      column += cells + BETWEEN;
    }
  }

  private void drawChoice(Sheet sheet, int column, int row, int index, int cells) {
    String keys = choices.get(index).keys();
    boolean isOpen = choices.get(index).reason().isEmpty();
    int start = column + keyCells - Prose.cells(keys);
    int next = sheet.put(start, row, keys, isOpen ? Ink.STRONG : Ink.PLAIN);
    String meaning = meaning(sheet.strokes(), index);
    sheet.put(next + 1, row, meaning, cells - keyCells - 1, Ink.PLAIN);
  }

  /** The cells that each column would like to have. */
  private List<Integer> columns(Strokes strokes, int rows) {
    List<Integer> wide = new ArrayList<>();
    for (int i = 0; i < choices.size(); i++) {
      int cells = keyCells + 1 + Math.min(Prose.cells(meaning(strokes, i)), MOST_CELLS);
      if (i % rows == 0) {
        wide.add(cells);
      } else {
        wide.set(i / rows, Math.max(wide.get(i / rows), cells));
      }
    }
    return wide;
  }

  private static int total(List<Integer> wide, int cap) {
    return wide.stream().mapToInt(cells -> Math.min(cells, cap) + BETWEEN).sum() - BETWEEN;
  }

  /**
   * What a choice means. Where it begins as the one before, up to a semicolon, the beginning is
   * left out: it would push what tells them apart out of sight.
   */
  private String meaning(Strokes strokes, int index) {
    String meaning = Prose.printable(choices.get(index).text());
    int part = meaning.indexOf(PART);
    boolean isRepeated =
        part > 0
            && index > 0
            && choices.get(index - 1).meaning().startsWith(meaning.substring(0, part + 1));
    return isRepeated ? strokes.ellipsis() + meaning.substring(part + 1) : meaning;
  }
}
