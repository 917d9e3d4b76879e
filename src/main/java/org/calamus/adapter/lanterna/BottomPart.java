package org.calamus.adapter.lanterna;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.calamus.core.dialogue.View;

/** The bottom of the screen: what can be said or pressed now, the timer and the counts. */
final class BottomPart {

  private static final int LEFT = 1;
  private static final int BETWEEN = 3;

  /** A piece of a hint, with the ink it is written in. */
  private record Piece(String text, Ink ink) {}

  private BottomPart() {}

  static void draw(Sheet sheet, Layout layout, View view) {
    drawHints(sheet, layout, view.hints());
    int slot = sheet.width() / 3;
    int row = layout.counts();
    String nextBand = view.nextBand().isBlank() ? "" : "next band " + view.nextBand();
    int end = sheet.width() - 2 - Prose.cells(Prose.printable(nextBand));
    int column = drawTimer(sheet, row, view);
    String saved = "saved " + view.savedCount();
    int after = Math.max(column, slot);
    if (after + saved.length() < end) {
      sheet.put(after, row, saved, Ink.PLAIN);
    }
    if (column < end) {
      sheet.putRight(row, nextBand, Ink.PLAIN);
    }
  }

  /**
   * Which saved record is open, or how long the bird is in the hand and what that means. Gives the
   * next free column.
   */
  private static int drawTimer(Sheet sheet, int row, View view) {
    if (!view.correcting().isBlank()) {
      String open = Prose.printable(view.correcting()).toUpperCase(Locale.ROOT);
      return sheet.put(0, row, " " + open + " ", Ink.ALERT_FILLED) + 1;
    }
    String inHand = "in hand " + view.inHand().map(BottomPart::minutes).orElse("--");
    return switch (view.hold()) {
      case WITHIN -> sheet.put(LEFT, row, inHand, Ink.PLAIN) + 2;
      case LONG -> sheet.put(0, row, " " + inHand + " LONG ", Ink.FILLED) + 1;
      case OVER -> sheet.put(0, row, " " + inHand + " OVER LIMIT: RELEASE ", Ink.ALERT_FILLED) + 1;
    };
  }

  /** As many as fit, in their order; an ellipsis where some are left out. */
  private static void drawHints(Sheet sheet, Layout layout, List<View.Hint> hints) {
    String ellipsis = sheet.strokes().ellipsis();
    int last = layout.hints() + layout.hintRows() - 1;
    int row = layout.hints();
    int column = LEFT;
    for (int i = 0; i < hints.size(); i++) {
      List<Piece> pieces = pieces(hints.get(i));
      int cells = pieces.stream().mapToInt(piece -> Prose.cells(piece.text())).sum();
      if (column + cells >= sheet.width() && row < last) {
        row++;
        column = LEFT;
      }
      boolean isLastHint = i == hints.size() - 1;
      int kept = row < last || isLastHint ? 0 : Prose.cells(ellipsis) + 1;
      if (column + cells + kept >= sheet.width()) {
        sheet.put(Math.max(column - 2, LEFT), row, ellipsis, Ink.PLAIN);
        return;
      }
      for (Piece piece : pieces) {
        column = sheet.put(column, row, piece.text(), piece.ink());
      }
      column += BETWEEN;
    }
  }

  private static List<Piece> pieces(View.Hint hint) {
    String keys = hint.keys().isBlank() ? "" : "[" + Prose.printable(hint.keys()) + "]";
    String toDo =
        Stream.of(Prose.printable(hint.words()), keys)
            .filter(part -> !part.isBlank())
            .collect(Collectors.joining(" "));
    String meaning = Prose.printable(hint.meaning());
    String gap = toDo.isBlank() || meaning.isBlank() ? "" : " ";
    return List.of(new Piece(toDo, Ink.STRONG), new Piece(gap + meaning, Ink.PLAIN));
  }

  private static String minutes(Duration time) {
    long hours = time.toHours();
    return hours > 0
        ? String.format(
            Locale.ROOT, "%d:%02d:%02d", hours, time.toMinutesPart(), time.toSecondsPart())
        : String.format(Locale.ROOT, "%d:%02d", time.toMinutes(), time.toSecondsPart());
  }
}
