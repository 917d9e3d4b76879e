package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import java.util.EnumSet;
import java.util.List;

/**
 * The few ways in which text is set off. The background always stays the terminal's own, so that
 * light and dark windows both read well, and no meaning hangs on an ink: a word or mark says the
 * same.
 */
enum Ink {
  /** Ordinary text. */
  PLAIN(TextColor.ANSI.DEFAULT),
  /** What the eye should find first. */
  STRONG(TextColor.ANSI.DEFAULT, SGR.BOLD),
  /** A word in a filled box. */
  FILLED(TextColor.ANSI.DEFAULT, SGR.BOLD, SGR.REVERSE),
  /** Something wrong or in doubt. */
  ALERT(TextColor.ANSI.RED, SGR.BOLD),
  /** A word in a filled box about something wrong or in doubt. */
  ALERT_FILLED(TextColor.ANSI.RED, SGR.BOLD, SGR.REVERSE);

  /** How many colours may be used. */
  enum Palette {
    /** The sixteen that every colour terminal has; the user's own theme decides their shades. */
    SIXTEEN,
    /** None: bold and reverse only, as asked for by {@code NO_COLOR} (no-color.org). */
    NONE
  }

  private final TextColor colour;
  private final EnumSet<SGR> marks = EnumSet.noneOf(SGR.class);

  Ink(TextColor colour, SGR... marks) {
    this.colour = colour;
    this.marks.addAll(List.of(marks));
  }

  /** The colour of the text in a palette. */
  TextColor colour(Palette palette) {
    return palette == Palette.NONE ? TextColor.ANSI.DEFAULT : colour;
  }

  /** Bold and reverse, as a copy. */
  EnumSet<SGR> marks() {
    return EnumSet.copyOf(marks);
  }
}
