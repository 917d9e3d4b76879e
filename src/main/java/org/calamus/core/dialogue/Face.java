package org.calamus.core.dialogue;

/**
 * What the bander was last told, and is typing.
 *
 * @param message the last message for the screen
 * @param big the large text
 * @param bigOf what the large text is; empty where nothing is large
 * @param keys the keys struck and not entered yet
 * @param isMenu whether the next digit chooses from the menu
 * @param misses how often in a row something was not understood
 * @param lastSaid the last phrase spoken
 * @param hasCautions whether the cautions are still shown
 */
record Face(
    String message,
    String big,
    String bigOf,
    String keys,
    boolean isMenu,
    int misses,
    String lastSaid,
    boolean hasCautions) {

  static Face atStart() {
    return new Face("", "", "", "", false, 0, "", true);
  }

  Face withMessage(String text) {
    return new Face(text, big, bigOf, keys, isMenu, misses, lastSaid, hasCautions);
  }

  Face withoutBig() {
    return withBig("", "");
  }

  Face withBig(String text, String label) {
    return new Face(message, text, label, keys, isMenu, misses, lastSaid, hasCautions);
  }

  Face withKeys(String text) {
    return new Face(message, big, bigOf, text, false, misses, lastSaid, hasCautions);
  }

  Face withMenu() {
    return new Face(message, big, bigOf, "", true, misses, lastSaid, hasCautions);
  }

  Face withMenuDigits(String digits) {
    return new Face(message, big, bigOf, digits, true, misses, lastSaid, hasCautions);
  }

  Face withoutMenu() {
    return new Face("", big, bigOf, "", false, misses, lastSaid, hasCautions);
  }

  Face withMisses(int count) {
    return new Face(message, big, bigOf, keys, isMenu, count, lastSaid, hasCautions);
  }

  Face withLastSaid(String phrase) {
    return new Face(message, big, bigOf, keys, isMenu, misses, phrase, hasCautions);
  }

  Face withoutCautions() {
    return new Face(message, big, bigOf, keys, isMenu, misses, lastSaid, false);
  }
}
