package org.calamus.adapter.lanterna;

/**
 * The characters that lines, bars and large glyphs are made of.
 *
 * @param block a full cell
 * @param half a cell whose lower half is full
 * @param faint a cell of the empty part of a bar
 * @param across a level line
 * @param upright an upright line
 * @param topLeft a corner
 * @param topRight a corner
 * @param bottomLeft a corner
 * @param bottomRight a corner
 * @param ellipsis stands for what did not fit
 */
record Strokes(
    char block,
    char half,
    char faint,
    char across,
    char upright,
    char topLeft,
    char topRight,
    char bottomLeft,
    char bottomRight,
    String ellipsis) {

  /**
   * For terminals that take UTF-8. Blocks and frames are in code page 437 as well, so that the
   * fonts of text consoles have them.
   */
  static final Strokes DRAWN = new Strokes('█', '▄', '░', '─', '│', '┌', '┐', '└', '┘', "…");

  /** For terminals that take ASCII only. */
  static final Strokes TYPED = new Strokes('#', '=', '.', '-', '|', '+', '+', '+', '+', "...");

  /** A level line. */
  String line(int cells) {
    return String.valueOf(across).repeat(Math.max(cells, 0));
  }
}
