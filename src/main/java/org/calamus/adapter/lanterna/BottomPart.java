package org.calamus.adapter.lanterna;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.calamus.core.dialogue.View;

/** The bottom of the screen: what can be said or pressed now, the timer and the counts. */
final class BottomPart {

  private static final String BETWEEN = "   ";

  /** A piece of a hint, with the ink it is written in. */
  private record Piece(String text, Ink ink) {}

  private BottomPart() {}

  static void draw(Sheet sheet, Layout layout, View view) {
    drawHints(sheet, layout, view.hints());
    int slot = sheet.width() / 3;
    int row = layout.counts();
    String inHand = view.inHand().map(BottomPart::minutes).orElse("--");
    sheet.put(1, row, "in hand " + inHand, slot - 2, Ink.STRONG);
    sheet.put(slot, row, "saved " + view.savedCount(), slot - 1, Ink.PLAIN);
    if (!view.nextBand().isBlank()) {
      sheet.putRight(row, "next band " + view.nextBand(), Ink.PLAIN);
    }
  }

  /** As many as fit, in their order; an ellipsis where some are left out. */
  private static void drawHints(Sheet sheet, Layout layout, List<View.Hint> hints) {
    int right = sheet.width() - 1;
    int column = 1;
    int row = layout.hints();
    int last = row + layout.hintRows() - 1;
    for (int i = 0; i < hints.size(); i++) {
      List<Piece> pieces = pieces(hints.get(i));
      int cells = pieces.stream().mapToInt(piece -> Prose.cells(piece.text())).sum();
      boolean isLast = i == hints.size() - 1;
      int kept = row == last && !isLast ? Prose.cells(sheet.strokes().ellipsis()) + 1 : 0;
      if (column + cells + kept > right && row < last && column > 1) {
        row++;
        column = 1;
        i--;
        continue;
      }
      if (column + cells + kept > right) {
        sheet.put(
            Math.max(column - BETWEEN.length() + 1, 1), row, sheet.strokes().ellipsis(), Ink.PLAIN);
        return;
      }
      for (Piece piece : pieces) {
        column = sheet.put(column, row, piece.text(), piece.ink());
      }
      column += BETWEEN.length();
    }
  }

  private static List<Piece> pieces(View.Hint hint) {
    List<Piece> pieces = new ArrayList<>();
    if (!hint.words().isBlank()) {
      pieces.add(new Piece(Prose.printable(hint.words()) + " ", Ink.STRONG));
    }
    if (!hint.keys().isBlank()) {
      pieces.add(new Piece("[" + Prose.printable(hint.keys()) + "] ", Ink.STRONG));
    }
    pieces.add(new Piece(Prose.printable(hint.meaning()), Ink.PLAIN));
    return pieces;
  }

  private static String minutes(Duration time) {
    long hours = time.toHours();
    return hours > 0
        ? String.format(
            Locale.ROOT, "%d:%02d:%02d", hours, time.toMinutesPart(), time.toSecondsPart())
        : String.format(Locale.ROOT, "%d:%02d", time.toMinutes(), time.toSecondsPart());
  }
}
