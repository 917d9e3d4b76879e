package org.calamus.adapter.plain;

import java.util.Optional;
import org.calamus.core.dialogue.Key;

/** Which characters of a stream are keys of the console. */
final class PlainKeys {

  private static final String MARKS = ".+-*/";
  private static final char CONTROL_C = 0x03;
  private static final char BACKSPACE = 0x08;
  private static final char DELETE = 0x7f;

  private PlainKeys() {}

  /** The key, or nothing where the character means nothing here. */
  static Optional<Key> key(char c) {
    switch (c) {
      case '\n':
        return Optional.of(Key.of(Key.Name.ENTER));
      case ' ':
        return Optional.of(Key.of(Key.Name.TALK));
      case BACKSPACE:
      case DELETE:
        return Optional.of(Key.of(Key.Name.BACKSPACE));
      case CONTROL_C:
        return Optional.of(Key.of(Key.Name.INTERRUPT));
      case ',':
        // the point key of keypads made for countries that write a decimal comma
        return Optional.of(Key.of('.'));
      default:
        boolean isDigit = c >= '0' && c <= '9';
        boolean isKnown = isDigit || Character.isLetter(c) || MARKS.indexOf(c) >= 0;
        return isKnown ? Optional.of(Key.of(c)) : Optional.empty();
    }
  }
}
