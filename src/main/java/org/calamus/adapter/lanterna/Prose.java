package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.TerminalTextUtils;
import java.util.ArrayList;
import java.util.List;

/** Fits text into cells: measures, cuts and wraps it. A wide character takes two cells. */
final class Prose {

  private Prose() {}

  /**
   * Replaces what cannot stand in a cell by a question mark: control characters, which could move
   * the cursor, and halves of characters beyond the basic plane, which Lanterna writes apart.
   */
  static String printable(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    for (char c : text.toCharArray()) {
      boolean isBlank = c == '\t' || c == '\n';
      boolean isOdd = Character.isISOControl(c) || Character.isSurrogate(c);
      clean.append(isBlank ? ' ' : isOdd ? '?' : c);
    }
    return clean.toString();
  }

  /** The cells that a text takes. */
  static int cells(String text) {
    return TerminalTextUtils.getColumnWidth(text);
  }

  /** The text, or its beginning and the ellipsis where it is wider than the cells. */
  static String cut(String text, int cells, String ellipsis) {
    if (cells(text) <= cells) {
      return text;
    }
    int room = cells - cells(ellipsis);
    return room < 1 ? head(text, cells) : head(text, room).stripTrailing() + ellipsis;
  }

  /**
   * Wraps at blanks; a word wider than the cells is broken. Gives no line for a blank text.
   *
   * @param mostLines where the text needs more, the last line ends in the ellipsis; at least 1
   */
  static List<String> wrap(String text, int cells, int mostLines, String ellipsis) {
    List<String> lines = new ArrayList<>();
    String rest = text.strip();
    while (!rest.isEmpty()) {
      if (lines.size() == mostLines - 1) {
        lines.add(cut(rest, cells, ellipsis));
        return lines;
      }
      String line = firstLine(rest, cells);
      lines.add(line.stripTrailing());
      rest = rest.substring(line.length()).stripLeading();
    }
    return lines;
  }

  private static String firstLine(String text, int cells) {
    if (cells(text) <= cells) {
      return text;
    }
    String head = head(text, Math.max(cells, 1));
    if (head.isEmpty()) {
      return text.substring(0, 1);
    }
    boolean isAtBlank = text.charAt(head.length()) == ' ';
    int blank = head.lastIndexOf(' ');
    return isAtBlank || blank <= 0 ? head : head.substring(0, blank);
  }

  private static String head(String text, int cells) {
    int end = 0;
    int used = 0;
    while (end < text.length()) {
      used += TerminalTextUtils.isCharDoubleWidth(text.charAt(end)) ? 2 : 1;
      if (used > cells) {
        break;
      }
      end++;
    }
    return text.substring(0, end);
  }
}
