package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldId;

/**
 * What the bander was last told, and is typing.
 *
 * @param message the last message for the screen
 * @param big the large text
 * @param bigOf what the large text is; empty where nothing is large
 * @param keys the keys struck and not entered yet
 * @param panel what is listed beside the record
 * @param missed what was not understood
 * @param told what was last said
 * @param hasCautions whether the cautions are still shown
 * @param browsing the page that is shown instead of the capture screen; empty where none is
 */
record Face(
    String message,
    String big,
    String bigOf,
    String keys,
    Panel panel,
    Misses missed,
    Told told,
    boolean hasCautions,
    Optional<Browsing> browsing) {

  /**
   * What was last said.
   *
   * @param phrase the phrase
   * @param repeats how often it was said again
   * @param field the field whose value was echoed last, or taken back, or emptied
   * @param rest what is still to be read back, group by group
   * @param isSaid whether the voice has come to the end of the phrase
   */
  record Told(
      String phrase, int repeats, Optional<FieldId> field, List<String> rest, boolean isSaid) {
    Told {
      rest = List.copyOf(rest);
    }
  }

  /** What is listed beside the record. */
  enum Panel {
    /** Nothing, or the codes of the field that is asked. */
    NONE,
    /** The menu of the keypad: the next digits choose from it. */
    MENU,
    /** What may be said and pressed; digits go to the field that is asked. */
    HELP
  }

  /** Whether the next digit chooses from the menu. */
  boolean isMenu() {
    return panel == Panel.MENU;
  }

  static Face atStart() {
    return new Face(
        "",
        "",
        "",
        "",
        Panel.NONE,
        Misses.none(),
        new Told("", 0, Optional.empty(), List.of(), false),
        true,
        Optional.empty());
  }

  /** How often in a row something was not understood. */
  int misses() {
    return missed.count();
  }

  /** The last phrase spoken. */
  String lastSaid() {
    return told.phrase();
  }

  Face withMessage(String text) {
    return new Face(text, big, bigOf, keys, panel, missed, told, hasCautions, browsing);
  }

  Face withoutBig() {
    return withBig("", "");
  }

  Face withBig(String text, String label) {
    return new Face(message, text, label, keys, panel, missed, told, hasCautions, browsing);
  }

  Face withKeys(String text) {
    return new Face(message, big, bigOf, text, Panel.NONE, missed, told, hasCautions, browsing);
  }

  Face withMenu() {
    return new Face(message, big, bigOf, "", Panel.MENU, missed, told, hasCautions, browsing);
  }

  Face withHelp() {
    return new Face(message, big, bigOf, "", Panel.HELP, missed, told, hasCautions, browsing);
  }

  Face withMenuDigits(String digits) {
    return new Face(message, big, bigOf, digits, Panel.MENU, missed, told, hasCautions, browsing);
  }

  Face withoutMenu() {
    return new Face("", big, bigOf, "", Panel.NONE, missed, told, hasCautions, browsing);
  }

  Face withMissed(Misses misses) {
    return new Face(message, big, bigOf, keys, panel, misses, told, hasCautions, browsing);
  }

  Face withLastSaid(String phrase) {
    return withTold(new Told(phrase, 0, told.field(), told.rest(), false));
  }

  Face withRepeats(int times) {
    return withTold(new Told(told.phrase(), times, told.field(), told.rest(), false));
  }

  Face withEchoed(Optional<FieldId> field) {
    return withTold(new Told(told.phrase(), told.repeats(), field, told.rest(), told.isSaid()));
  }

  Face withRest(List<String> groups) {
    return withTold(new Told(told.phrase(), told.repeats(), told.field(), groups, told.isSaid()));
  }

  /** The voice has fallen silent. */
  Face withSaid() {
    return withTold(new Told(told.phrase(), told.repeats(), told.field(), told.rest(), true));
  }

  private Face withTold(Told last) {
    return new Face(message, big, bigOf, keys, panel, missed, last, hasCautions, browsing);
  }

  Face withoutCautions() {
    return new Face(message, big, bigOf, keys, panel, missed, told, false, browsing);
  }

  /** Another page, or none. */
  Face withBrowsing(Optional<Browsing> shown) {
    return new Face(message, big, bigOf, keys, panel, missed, told, hasCautions, shown);
  }
}
