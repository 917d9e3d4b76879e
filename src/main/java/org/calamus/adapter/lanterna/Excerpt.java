package org.calamus.adapter.lanterna;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.calamus.core.dialogue.View;

/**
 * The lines of a record that are shown where not all have room: what is asked or in question, then
 * what is missing, then what was taken nearest to what is asked, then empty fields.
 *
 * @param shown the lines, in the form's order
 * @param moreTaken how many that are not empty are left out
 * @param moreEmpty how many empty ones are left out
 */
record Excerpt(List<View.Line> shown, long moreTaken, long moreEmpty) {

  /** All lines, or the ones that matter most. */
  static Excerpt of(List<View.Line> lines, int most) {
    int focus = focus(lines);
    List<View.Line> shown =
        IntStream.range(0, lines.size())
            .boxed()
            .sorted(
                Comparator.comparingInt((Integer i) -> rank(lines.get(i)))
                    .thenComparingInt(i -> Math.abs(i - focus)))
            .limit(Math.max(most, 0))
            .sorted()
            .map(lines::get)
            .toList();
    long empty = empty(lines) - empty(shown);
    return new Excerpt(shown, lines.size() - shown.size() - empty, empty);
  }

  private static long empty(List<View.Line> lines) {
    return lines.stream().filter(line -> line.standing() == View.Standing.EMPTY).count();
  }

  /** The line in work; the last one where none is, since then the record is complete. */
  private static int focus(List<View.Line> lines) {
    return IntStream.range(0, lines.size())
        .filter(i -> rank(lines.get(i)) == 0)
        .findFirst()
        .orElse(lines.size() - 1);
  }

  private static int rank(View.Line line) {
    return switch (line.standing()) {
      case ASKED, IN_QUESTION -> 0;
      case MISSING -> 1;
      case TAKEN, CONFIRMED -> 2;
      case EMPTY -> 3;
    };
  }
}
