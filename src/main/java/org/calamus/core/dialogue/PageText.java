package org.calamus.core.dialogue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.calamus.core.rule.BandString;
import org.calamus.core.summary.Tally;

/** Puts what pages say into columns and lines. */
final class PageText {

  /** Letters of a bar: new, recapture, other. */
  private static final char[] LETTERS = {'N', 'R', 'O'};

  private PageText() {}

  /** The text with blanks behind it; cut where it is longer, so that the columns stay. */
  static String padded(String text, int cells) {
    return text.length() >= cells
        ? text.substring(0, cells - 1) + " "
        : text + " ".repeat(cells - text.length());
  }

  /** A number with blanks before it. */
  static String right(long number, int cells) {
    String text = Long.toString(number);
    return " ".repeat(Math.max(0, cells - text.length())) + text;
  }

  /** Lines of whole words; a word longer than a line stands in one of its own, cut. */
  static List<String> wrapped(String text, int cells) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+")) {
      String fitting = word.length() > cells ? word.substring(0, cells) : word;
      if (line.length() > 0 && line.length() + 1 + fitting.length() > cells) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(fitting);
    }
    lines.add(line.toString());
    return lines;
  }

  /**
   * A bar of letters, one for so many birds.
   *
   * @param birds the birds
   * @param perLetter how many birds a letter stands for, at least 1
   */
  static String bar(Tally birds, int perLetter) {
    StringBuilder bar = new StringBuilder();
    int[] parts = {birds.fresh(), birds.recaptured(), birds.others()};
    int counted = 0;
    for (int i = 0; i < parts.length; i++) {
      counted += parts[i];
      int end = (counted + perLetter - 1) / perLetter;
      bar.append(String.valueOf(LETTERS[i]).repeat(Math.max(0, end - bar.length())));
    }
    return bar.toString();
  }

  /** How many birds a letter must stand for so that the longest bar has room. */
  static int perLetter(int most, int cells) {
    return Math.max(1, (most + cells - 1) / cells);
  }

  /** What the letters of a bar mean. */
  static String legend(int perLetter) {
    String birds = perLetter == 1 ? "a bird" : perLetter + " birds";
    return "N new  R recapture  O other; a letter is " + birds;
  }

  /** Bands: the number, or the first and the last. */
  static String range(BandString bands) {
    return bands.count() == 1
        ? bands.first().text()
        : bands.first().text() + " to " + bands.last().text();
  }

  static String minutes(Duration time) {
    return String.format(Locale.ROOT, "%d:%02d", time.toMinutes(), time.toSecondsPart());
  }
}
