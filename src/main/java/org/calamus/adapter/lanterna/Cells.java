package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.TextCharacter;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;

/**
 * Keeps the cells that were drawn once, by ink and character. Lanterna searches every text for
 * character boundaries anew, which was more than half of the cost of a drawing. Used from the
 * drawing thread only.
 */
final class Cells {

  private final Ink.Palette palette;
  private final Map<Ink, Map<Character, TextCharacter>> known = new EnumMap<>(Ink.class);

  Cells(Ink.Palette palette) {
    this.palette = palette;
  }

  /** The cell of a printable character. */
  TextCharacter cell(char character, Ink ink) {
    return known
        .computeIfAbsent(ink, any -> new HashMap<>())
        .computeIfAbsent(character, any -> make(character, ink));
  }

  private TextCharacter make(char character, Ink ink) {
    return TextCharacter.fromString(
        Character.toString(character),
        ink.colour(palette),
        ink.ground(palette),
        ink.marks(palette))[0];
  }
}
