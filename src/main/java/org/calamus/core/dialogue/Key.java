package org.calamus.core.dialogue;

/**
 * A key of the numeric keypad, or a letter of the keyboard where there is one.
 *
 * @param name which key
 * @param character the character of {@link Name#CHARACTER}; a blank otherwise
 */
public record Key(Name name, char character) {

  /** Which key. */
  public enum Name {
    /** A digit, a letter, or one of {@code . + - * /}. */
    CHARACTER,
    /** Enter, on the keypad or the keyboard. */
    ENTER,
    /** Backspace or Delete: takes back one character that is not entered yet. */
    BACKSPACE,
    /** The key to talk: the space bar, or a foot switch that types one. */
    TALK,
    /** Control-C, or the window closing. */
    INTERRUPT
  }

  /** A character key. */
  public static Key of(char character) {
    return new Key(Name.CHARACTER, character);
  }

  /** A key that is no character. */
  public static Key of(Name name) {
    return new Key(name, ' ');
  }
}
