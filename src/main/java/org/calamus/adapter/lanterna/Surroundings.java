package org.calamus.adapter.lanterna;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What the environment variables say about the terminal.
 *
 * @param palette no colour where {@code NO_COLOR} is set and not empty (no-color.org), or the
 *     terminal has none
 * @param charset UTF-8, or ASCII where the locale names another character set
 * @param isDumb whether the terminal cannot place its cursor: {@code TERM} is {@code dumb} or unset
 * @param isWindows whether Windows itself runs the program, which has neither {@code /dev/tty} nor
 *     {@code stty}: {@code OS} is {@code Windows_NT}, as Windows sets it for every program
 * @param columns from {@code COLUMNS}; 80 where that is unset or odd
 * @param rows from {@code LINES}; 24 where that is unset or odd
 */
record Surroundings(
    Ink.Palette palette,
    Charset charset,
    boolean isDumb,
    boolean isWindows,
    int columns,
    int rows) {

  private static final int MOST_CELLS = 1000;

  /**
   * Terminals without colours by their names: terminfo, as ncurses has it ({@code -m} ends one).
   */
  private static final Pattern MONOCHROME = Pattern.compile("vt[1-4]\\d\\d(-.*)?|.*-m|.*-mono");

  static Surroundings of(Map<String, String> environment) {
    String term = environment.getOrDefault("TERM", "");
    boolean isPlain =
        !environment.getOrDefault("NO_COLOR", "").isEmpty() || MONOCHROME.matcher(term).matches();
    return new Surroundings(
        isPlain ? Ink.Palette.NONE : Ink.Palette.SIXTEEN,
        isUnicode(environment) ? StandardCharsets.UTF_8 : StandardCharsets.US_ASCII,
        term.isEmpty() || term.equals("dumb"),
        environment.getOrDefault("OS", "").equals("Windows_NT"),
        cells(environment.getOrDefault("COLUMNS", ""), 80),
        cells(environment.getOrDefault("LINES", ""), 24));
  }

  /** The characters to draw with. */
  Strokes strokes() {
    return charset.equals(StandardCharsets.UTF_8) ? Strokes.DRAWN : Strokes.TYPED;
  }

  /**
   * The first of the three that is set and not empty decides (POSIX, 8.2). Where none is, the
   * terminal of today takes UTF-8; where the locale is C by name, it may not.
   */
  private static boolean isUnicode(Map<String, String> environment) {
    String locale =
        Stream.of("LC_ALL", "LC_CTYPE", "LANG")
            .map(name -> environment.getOrDefault(name, ""))
            .filter(value -> !value.isEmpty())
            .findFirst()
            .orElse("UTF-8");
    String name = locale.toUpperCase(Locale.ROOT);
    return name.contains("UTF-8") || name.contains("UTF8");
  }

  private static int cells(String text, int otherwise) {
    if (!text.matches("[0-9]{1,4}")) {
      return otherwise;
    }
    int cells = Integer.parseInt(text);
    return cells >= 1 && cells <= MOST_CELLS ? cells : otherwise;
  }
}
