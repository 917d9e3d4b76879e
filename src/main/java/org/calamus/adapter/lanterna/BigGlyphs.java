package org.calamus.adapter.lanterna;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Large glyphs made of blocks, to be read from a metre: digits, letters and the few marks that
 * values contain. Strokes are two cells wide and one high, which is about square in a terminal; ten
 * glyphs of a band number fit into 80 cells.
 */
final class BigGlyphs {

  /** Rows of a glyph at scale 1. */
  static final int ROWS = 5;

  private static final int GAP = 2;

  /** Rows of glyphs side by side, each closed by an upright line, below the character each is. */
  private static final String GLYPHS =
      """
      0     |1     |2     |3     |4     |5     |6     |7     |
      ######|####  |######|######|##  ##|######|######|######|
      ##  ##|  ##  |    ##|    ##|##  ##|##    |##    |    ##|
      ##  ##|  ##  |######| #####|######|######|######|   ## |
      ##  ##|  ##  |##    |    ##|    ##|    ##|##  ##|  ##  |
      ######|######|######|######|    ##|######|######|  ##  |
      8     |9     |A     |B     |C     |D     |E     |F     |
      ######|######| #### |##### | #####|##### |######|######|
      ##  ##|##  ##|##  ##|##  ##|##    |##  ##|##    |##    |
      ######|######|######|##### |##    |##  ##|####  |####  |
      ##  ##|    ##|##  ##|##  ##|##    |##  ##|##    |##    |
      ######|######|##  ##|##### | #####|##### |######|##    |
      G     |H     |I     |J     |K     |L     |M       |N      |
       #####|##  ##|######|    ##|##  ##|##    |##    ##|##   ##|
      ##    |##  ##|  ##  |    ##|## ## |##    |###  ###|###  ##|
      ##  ##|######|  ##  |    ##|####  |##    |## ## ##|## # ##|
      ##  ##|##  ##|  ##  |##  ##|## ## |##    |##    ##|##  ###|
       #####|##  ##|######| #### |##  ##|######|##    ##|##   ##|
      O     |P     |Q     |R     |S     |T     |U     |V     |
       #### |##### | #### |##### | #####|######|##  ##|##  ##|
      ##  ##|##  ##|##  ##|##  ##|##    |  ##  |##  ##|##  ##|
      ##  ##|##### |##  ##|##### | #### |  ##  |##  ##|##  ##|
      ##  ##|##    |## ## |## ## |    ##|  ##  |##  ##| #### |
       #### |##    | ### #|##  ##|##### |  ##  | #### |  ##  |
      W       |X     |Y     |Z     |. |-   |+     |*    |
      ##    ##|##  ##|##  ##|######|  |    |      |     |
      ##    ##| #### |##  ##|   ## |  |    |  ##  |## ##|
      ## ## ##|  ##  | #### |  ##  |  |####|######| ### |
      ###  ###| #### |  ##  | ##   |  |    |  ##  |## ##|
      ##    ##|##  ##|  ##  |######|##|    |      |     |
      /     |?     |
          ##|##### |
         ## |    ##|
        ##  |  ### |
       ##   |      |
      ##    |  ##  |
      """;

  private static final Map<Character, List<String>> TABLE = table();

  private BigGlyphs() {}

  /**
   * The text as rows of blocks and blanks.
   *
   * @param text what to write; small letters become capitals
   * @param cells the width there is
   * @param scale 1, or 2 for twice the size; where that is too wide, 1 is tried
   * @param block the character to build of
   * @return empty where a character has no glyph or the text is too wide
   */
  static Optional<List<String>> rows(String text, int cells, int scale, char block) {
    String capitals = text.toUpperCase(Locale.ROOT);
    if (capitals.isBlank() || !capitals.chars().allMatch(c -> TABLE.containsKey((char) c))) {
      return Optional.empty();
    }
    if (width(capitals) * scale > cells) {
      return scale == 1 ? Optional.empty() : rows(text, cells, 1, block);
    }
    List<String> rows = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      String stretched = stretch(row(capitals, row), scale).replace('#', block);
      for (int i = 0; i < scale; i++) {
        rows.add(stretched);
      }
    }
    return Optional.of(rows);
  }

  private static String row(String text, int row) {
    StringBuilder line = new StringBuilder();
    for (char c : text.toCharArray()) {
      line.append(TABLE.get(c).get(row)).append(" ".repeat(GAP));
    }
    return line.toString().stripTrailing();
  }

  private static String stretch(String line, int scale) {
    StringBuilder stretched = new StringBuilder();
    line.chars().forEach(c -> stretched.append(String.valueOf((char) c).repeat(scale)));
    return stretched.toString();
  }

  private static int width(String text) {
    return text.chars().map(c -> TABLE.get((char) c).get(0).length() + GAP).sum() - GAP;
  }

  private static Map<Character, List<String>> table() {
    Map<Character, List<String>> table = new HashMap<>();
    List<String[]> lines = GLYPHS.lines().map(line -> line.split("\\|")).toList();
    for (int first = 0; first < lines.size(); first += ROWS + 1) {
      String[] characters = lines.get(first);
      for (int i = 0; i < characters.length; i++) {
        int column = i;
        table.put(
            characters[i].charAt(0),
            lines.subList(first + 1, first + 1 + ROWS).stream().map(row -> row[column]).toList());
      }
    }
    table.put(' ', List.of("    ", "    ", "    ", "    ", "    "));
    return table;
  }
}
