package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.dialogue.Key;

/**
 * Which key strokes mean something here. The cursor keys stand for the digits of a keypad whose Num
 * Lock is off, since nothing on this console is moved by a cursor; with Ctrl or Alt they mean
 * nothing, as does every character with Alt, the escape key and the function keys.
 */
final class KeyTable {

  private static final String MARKS = ".+-*/";

  private static final Map<KeyType, Key> NAMED =
      Map.ofEntries(
          Map.entry(KeyType.Enter, Key.of(Key.Name.ENTER)),
          Map.entry(KeyType.Backspace, Key.of(Key.Name.BACKSPACE)),
          Map.entry(KeyType.Insert, Key.of('0')),
          Map.entry(KeyType.End, Key.of('1')),
          Map.entry(KeyType.ArrowDown, Key.of('2')),
          Map.entry(KeyType.PageDown, Key.of('3')),
          Map.entry(KeyType.ArrowLeft, Key.of('4')),
          Map.entry(KeyType.ArrowRight, Key.of('6')),
          Map.entry(KeyType.Home, Key.of('7')),
          Map.entry(KeyType.ArrowUp, Key.of('8')),
          Map.entry(KeyType.PageUp, Key.of('9')),
          Map.entry(KeyType.Delete, Key.of('.')));

  private KeyTable() {}

  /** The key, or nothing where the stroke means nothing here. */
  static Optional<Key> key(KeyStroke stroke) {
    if (stroke.isAltDown()) {
      return Optional.empty();
    }
    if (stroke.getKeyType() == KeyType.Character) {
      return character(stroke.getCharacter(), stroke.isCtrlDown());
    }
    return stroke.isCtrlDown() || stroke.isShiftDown()
        ? Optional.empty()
        : Optional.ofNullable(NAMED.get(stroke.getKeyType()));
  }

  private static Optional<Key> character(char c, boolean isCtrlDown) {
    if (isCtrlDown) {
      return c == 'c' ? Optional.of(Key.of(Key.Name.INTERRUPT)) : Optional.empty();
    }
    if (c == ' ') {
      return Optional.of(Key.of(Key.Name.TALK));
    }
    if (c == ',') {
      // the point key of keypads made for countries that write a decimal comma
      return Optional.of(Key.of('.'));
    }
    boolean isDigit = c >= '0' && c <= '9';
    boolean isKnown = isDigit || Character.isLetter(c) || MARKS.indexOf(c) >= 0;
    return isKnown ? Optional.of(Key.of(c)) : Optional.empty();
  }
}
