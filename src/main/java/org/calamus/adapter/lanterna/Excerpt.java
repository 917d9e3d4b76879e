package org.calamus.adapter.lanterna;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.calamus.core.dialogue.View;

/**
 * The lines of a record that are shown where not all have room: what is asked or in question, then
 * what is missing, then what was taken nearest to what is asked, then empty fields.
 *
 * @param shown the lines, in the form's order
 * @param more what is left out, such as {@code 3 more taken, 5 more empty}; empty where nothing is
 */
record Excerpt(List<View.Line> shown, String more) {

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
    return new Excerpt(shown, more(lines, shown));
  }

  private static String more(List<View.Line> lines, List<View.Line> shown) {
    return Stream.of("missing", "taken", "empty")
        .map(word -> Map.entry(word, count(lines, word) - count(shown, word)))
        .filter(count -> count.getValue() > 0)
        .map(count -> count.getValue() + " more " + count.getKey())
        .collect(Collectors.joining(", "));
  }

  private static long count(List<View.Line> lines, String word) {
    return lines.stream().filter(line -> word(line).equals(word)).count();
  }

  private static String word(View.Line line) {
    return switch (line.standing()) {
      case ASKED, IN_QUESTION, MISSING -> "missing";
      case TAKEN, CONFIRMED -> "taken";
      case EMPTY -> "empty";
    };
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
