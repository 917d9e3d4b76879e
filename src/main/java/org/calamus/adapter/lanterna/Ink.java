package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import java.util.EnumSet;
import java.util.List;

/**
 * The few ways in which text is set off. No meaning hangs on an ink: a word or mark says the same.
 *
 * <p>Text keeps the terminal's own two colours, so that light and dark windows both read well. The
 * one box with colours of its own brings both of them, since no colour of the sixteen is legible on
 * black and on white alike. Reversed text is never bold: text consoles draw the two together as
 * dark grey on grey.
 */
enum Ink {
  /** Ordinary text. */
  PLAIN(false),
  /** What the eye should find first. */
  STRONG(false, SGR.BOLD),
  /** A word in a filled box. */
  FILLED(false, SGR.REVERSE),
  /** A word in a filled box about something wrong, in doubt or over its limit. */
  ALERT_FILLED(true, SGR.REVERSE);

  /** How many colours may be used. */
  enum Palette {
    /** The sixteen that every colour terminal has; the user's own theme decides their shades. */
    SIXTEEN,
    /** None: bold and reverse only, as asked for by {@code NO_COLOR} (no-color.org). */
    NONE
  }

  private final boolean isAlert;
  private final EnumSet<SGR> marks = EnumSet.noneOf(SGR.class);

  /**
   * An ink.
   *
   * @param isAlert whether it has colours of its own where there are some
   * @param marks what sets it off where it has none
   */
  Ink(boolean isAlert, SGR... marks) {
    this.isAlert = isAlert;
    this.marks.addAll(List.of(marks));
  }

  private boolean isColoured(Palette palette) {
    return isAlert && palette == Palette.SIXTEEN;
  }

  /** The colour of the text in a palette. */
  TextColor colour(Palette palette) {
    return isColoured(palette) ? TextColor.ANSI.WHITE_BRIGHT : TextColor.ANSI.DEFAULT;
  }

  /** The colour behind the text in a palette. */
  TextColor ground(Palette palette) {
    return isColoured(palette) ? TextColor.ANSI.RED : TextColor.ANSI.DEFAULT;
  }

  /** Bold and reverse in a palette, as a copy. */
  EnumSet<SGR> marks(Palette palette) {
    return isColoured(palette) ? EnumSet.of(SGR.BOLD) : EnumSet.copyOf(marks);
  }
}
