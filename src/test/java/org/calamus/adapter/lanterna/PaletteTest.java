package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The contrast of every ink, calculated for the colours that terminals give to the sixteen, for all
 * eyes and for the three kinds of colour blindness.
 */
class PaletteTest {

  /** WCAG 2.1, success criterion 1.4.3: text, not large. */
  private static final double LEAST = 4.5;

  /**
   * A terminal's colours, red, green and blue of 0 to 255.
   *
   * @param text its own text
   * @param ground its own background
   * @param red colour 1 of the sixteen
   * @param white colour 15
   * @param isConsole whether bold text is drawn in the bright colour of the same number, also where
   *     it was reversed before, as the Linux console does (its build_attr, from memory)
   * @param bright what bold makes of its text, and of its background where that is reversed
   */
  private record Terminal(
      String name,
      int[] text,
      int[] ground,
      int[] red,
      int[] white,
      boolean isConsole,
      List<int[]> bright) {

    @Override
    public String toString() {
      return name;
    }
  }

  private static int[] rgb(int red, int green, int blue) {
    return new int[] {red, green, blue};
  }

  /** xterm's table: XTerm-col.ad, red3 and white (from memory); its text is black or grey90. */
  private static final List<Terminal> TERMINALS =
      List.of(
          xterm("xterm, light", rgb(0, 0, 0), rgb(255, 255, 255)),
          xterm("xterm, dark", rgb(229, 229, 229), rgb(0, 0, 0)),
          vga(
              "Linux console, dark",
              rgb(170, 170, 170),
              rgb(0, 0, 0),
              rgb(255, 255, 255),
              rgb(85, 85, 85)),
          vga(
              "Linux console, light",
              rgb(0, 0, 0),
              rgb(170, 170, 170),
              rgb(85, 85, 85),
              rgb(255, 255, 255)));

  private static Terminal xterm(String name, int[] text, int[] ground) {
    return new Terminal(
        name, text, ground, rgb(205, 0, 0), rgb(255, 255, 255), false, List.of(text, ground));
  }

  /** The sixteen of the VGA text mode, which the Linux console takes over. */
  private static Terminal vga(String name, int[] text, int[] ground, int[] bold, int[] reversed) {
    return new Terminal(
        name, text, ground, rgb(170, 0, 0), rgb(255, 255, 255), true, List.of(bold, reversed));
  }

  /**
   * Machado, Oliveira & Fernandes 2009, IEEE Transactions on Visualization and Computer Graphics
   * 15(6), 1291-1298: severity 1.0, for linear red, green and blue.
   */
  private static final Map<String, double[][]> EYES =
      Map.of(
          "all colours", new double[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
          "protanopia",
              new double[][] {
                {0.152286, 1.052583, -0.204868},
                {0.114503, 0.786281, 0.099216},
                {-0.003882, -0.048116, 1.051998}
              },
          "deuteranopia",
              new double[][] {
                {0.367322, 0.860646, -0.227968},
                {0.280085, 0.672501, 0.047413},
                {-0.011820, 0.042940, 0.968881}
              },
          "tritanopia",
              new double[][] {
                {1.255528, -0.076749, -0.178779},
                {-0.078411, 0.930809, 0.147602},
                {0.004733, 0.691367, 0.303900}
              });

  static Stream<Arguments> everyInkIsLegible() {
    return TERMINALS.stream()
        .flatMap(
            terminal ->
                EYES.keySet().stream()
                    .flatMap(
                        eyes ->
                            Arrays.stream(Ink.Palette.values())
                                .map(palette -> Arguments.of(terminal, eyes, palette))));
  }

  @ParameterizedTest(name = "{0}, {1}, {2}")
  @MethodSource
  void everyInkIsLegible(Terminal terminal, String eyes, Ink.Palette palette) {
    for (Ink ink : Ink.values()) {
      List<int[]> drawn = drawn(ink, palette, terminal);
      double ratio = contrast(seen(drawn.get(0), eyes), seen(drawn.get(1), eyes));
      // bold ordinary text on a light console is dark grey on grey: the console's own doing
      double least = isBoldOnLightConsole(ink, palette, terminal) ? 3.0 : LEAST;
      assertThat(ratio).as(ink + " on " + terminal + " for " + eyes).isGreaterThan(least);
    }
  }

  private static boolean isBoldOnLightConsole(Ink ink, Ink.Palette palette, Terminal terminal) {
    boolean isLight = luminance(linear(terminal.ground())) > luminance(linear(terminal.text()));
    return terminal.isConsole()
        && isLight
        && ink.marks(palette).equals(EnumSet.of(SGR.BOLD))
        && ink.ground(palette).equals(TextColor.ANSI.DEFAULT);
  }

  @Test
  void contrastAndSimulationAreAsPublished() {
    // WCAG 2.1: 21 to 1 for black on white; the grey of 767676 is the lightest of 4.5 to 1 on white
    assertThat(contrast(linear(rgb(0, 0, 0)), linear(rgb(255, 255, 255)))).isEqualTo(21.0);
    assertThat(contrast(linear(rgb(0x76, 0x76, 0x76)), linear(rgb(255, 255, 255))))
        .isBetween(4.5, 4.6);
    assertThat(contrast(linear(rgb(0x77, 0x77, 0x77)), linear(rgb(255, 255, 255)))).isLessThan(4.5);
    for (String eyes : EYES.keySet()) {
      assertThat(luminance(seen(rgb(255, 255, 255), eyes))).as(eyes).isBetween(0.99, 1.01);
    }
    assertThat(luminance(seen(rgb(255, 0, 0), "protanopia")))
        .as("red is dark without the cones for it")
        .isLessThan(luminance(linear(rgb(255, 0, 0))));
  }

  @Test
  void aBoldReversedBoxWouldBeIllegibleOnTheConsole() {
    Terminal console = TERMINALS.get(2);
    int[] greyOnGrey = console.bright().get(1);
    assertThat(contrast(linear(greyOnGrey), linear(console.text()))).isLessThan(LEAST);
    for (Ink ink : Ink.values()) {
      for (Ink.Palette palette : Ink.Palette.values()) {
        assertThat(ink.marks(palette)).doesNotContainSequence(SGR.BOLD, SGR.REVERSE);
      }
    }
  }

  /** Text and ground as a terminal draws them. */
  private static List<int[]> drawn(Ink ink, Ink.Palette palette, Terminal terminal) {
    boolean isColoured = !ink.ground(palette).equals(TextColor.ANSI.DEFAULT);
    EnumSet<SGR> marks = ink.marks(palette);
    if (isColoured) {
      assertThat(ink.ground(palette)).isEqualTo(TextColor.ANSI.RED);
      assertThat(ink.colour(palette)).isEqualTo(TextColor.ANSI.WHITE_BRIGHT);
      return List.of(terminal.white(), terminal.red());
    }
    boolean isReversed = marks.contains(SGR.REVERSE);
    int[] text = isReversed ? terminal.ground() : terminal.text();
    int[] ground = isReversed ? terminal.text() : terminal.ground();
    if (marks.contains(SGR.BOLD)) {
      text = terminal.bright().get(isReversed ? 1 : 0);
    }
    return List.of(text, ground);
  }

  /** WCAG 2.1, contrast ratio. */
  private static double contrast(double[] one, double[] other) {
    double a = luminance(one) + 0.05;
    double b = luminance(other) + 0.05;
    return Math.max(a, b) / Math.min(a, b);
  }

  /** WCAG 2.1, relative luminance, of linear red, green and blue. */
  private static double luminance(double[] linear) {
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  }

  private static double[] linear(int[] rgb) {
    return Arrays.stream(rgb)
        .mapToDouble(c -> c / 255.0)
        .map(c -> c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4))
        .toArray();
  }

  private static double[] seen(int[] rgb, String eyes) {
    double[] from = linear(rgb);
    return Arrays.stream(EYES.get(eyes))
        .mapToDouble(row -> row[0] * from[0] + row[1] * from[1] + row[2] * from[2])
        .map(c -> Math.min(1, Math.max(0, c)))
        .toArray();
  }
}
