package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.speech.Command;

/**
 * The table of the commands: what is said, what is struck and what is shown are all made from it.
 *
 * @param command the command
 * @param keys what to strike on a numeric keypad
 * @param meaning what it does, in a word or two
 */
record Sayable(Command command, String keys, String meaning) {

  /** All of them, in the order in which they are listed. */
  static final List<Sayable> ALL =
      List.of(
          new Sayable(Command.PAGE_CAPTURE, "-", "back to capture"),
          new Sayable(Command.PAGE_ON, "*", "next rows"),
          new Sayable(Command.PAGE_BACK, "/", "rows before"),
          new Sayable(Command.PAGE_CHOOSE, ".", "choose next row"),
          new Sayable(Command.AFFIRM, "Enter", "yes"),
          new Sayable(Command.NEGATIVE, "-", "no"),
          new Sayable(Command.CORRECT, "-", "take back"),
          new Sayable(Command.NEXT, "*", "leave the field"),
          new Sayable(Command.PREVIOUS, "+94", "field before"),
          new Sayable(Command.REPEAT, "/", "last phrase"),
          new Sayable(Command.HELP, "+.", "what fits now"),
          new Sayable(Command.SAVE, "++", "save"),
          new Sayable(Command.READBACK, "+*", "whole record"),
          new Sayable(Command.READ_FIELD, "+92", "field asked"),
          new Sayable(Command.MISSING, "+93", "what is to be given"),
          new Sayable(Command.ERASE, "+-", "empty a field"),
          new Sayable(Command.OUT_OF_ORDER, "+3", "skipped bands stay"),
          new Sayable(Command.PAGE_SESSION, "+70", "session"),
          new Sayable(Command.PAGE_RECORDS, "+71", "day's records"),
          new Sayable(Command.PAGE_RECORD, "+76", "last record"),
          new Sayable(Command.PAGE_STRINGS, "+72", "band strings"),
          new Sayable(Command.PAGE_SPECIES, "+73", "species, hours"),
          new Sayable(Command.PAGE_EFFORT, "+75", "net-hours"),
          new Sayable(Command.PAGE_COMMANDS, "+74", "all commands"),
          new Sayable(Command.STAND_BY, "+95", "pause"),
          new Sayable(Command.RESUME, "+95", "go on"),
          new Sayable(Command.TALK_KEY, "+96", "ears by key"),
          new Sayable(Command.TALK_OPEN, "+96", "ears open"),
          new Sayable(Command.AMEND, "+81", "correct a saved record"),
          new Sayable(Command.OPEN_NETS, "+82", "enter that nets are open"),
          new Sayable(Command.CLOSE_NETS, "+83", "enter that nets are closed"),
          new Sayable(Command.REASON_MISHEARD, "1 Enter", "why"),
          new Sayable(Command.REASON_MISKEYED, "2 Enter", "why"),
          new Sayable(Command.REASON_MISREAD, "3 Enter", "why"),
          new Sayable(Command.REASON_WRONG_FIELD, "4 Enter", "why"),
          new Sayable(Command.REASON_IDENTIFIED_ANEW, "5 Enter", "why"),
          new Sayable(Command.REASON_OTHER, "6 Enter", "why, as a memo"),
          new Sayable(Command.ABANDON, "+98", "give the record up"),
          new Sayable(Command.END, "+99", "end"));

  /** What keys stand for now: of two commands on the same keys the one that can be given. */
  static Optional<Sayable> struck(String keys, State state) {
    List<Sayable> found =
        ALL.stream().filter(s -> s.keys().equals(keys) && s.isShown(state)).toList();
    return found.stream()
        .filter(s -> s.unavailable(state).isEmpty())
        .findFirst()
        .or(() -> found.stream().findFirst());
  }

  /** Why it cannot be given now; empty where it can. */
  String unavailable(State state) {
    boolean isAsking = state.question().isPresent();
    boolean isOther = Values.isOtherQuestion(state);
    switch (command) {
      case AFFIRM:
        return isAsking || state.open().isEmpty() ? "" : "no question";
      case NEGATIVE:
        return isAsking ? "" : "no question";
      case CORRECT:
        return isAsking || !state.changes().isEmpty() ? "" : "nothing taken";
      case NEXT:
      case PREVIOUS:
        return isOther ? "answer first" : "";
      case SAVE:
        return isAsking ? "answer first" : withBird(state);
      case ERASE:
        return isAsking ? "answer first" : withBird(state);
      case READBACK:
      case ABANDON:
        return withBird(state);
      case AMEND:
        return state.record().isEmpty() ? "" : state.isCorrecting() ? "open" : "bird in hand";
      case REASON_MISHEARD:
      case REASON_MISKEYED:
      case REASON_MISREAD:
      case REASON_WRONG_FIELD:
      case REASON_IDENTIFIED_ANEW:
      case REASON_OTHER:
        return state.question().filter(Question.Reason.class::isInstance).isPresent()
            ? ""
            : "no correction";
      case OPEN_NETS:
      case CLOSE_NETS:
        return isAsking ? "answer first" : "";
      case OUT_OF_ORDER:
        return isSkipped(state) ? "" : "no band skipped";
      case STAND_BY:
        return Heeding.isPaused(state) ? "paused" : "";
      case RESUME:
        return Heeding.isPaused(state) ? "" : "not paused";
      case TALK_KEY:
        return isTalkOpen(state) ? "" : "set so";
      case TALK_OPEN:
        return isTalkOpen(state) ? "set so" : "";
      case PAGE_CAPTURE:
      case PAGE_ON:
      case PAGE_BACK:
      case PAGE_CHOOSE:
        return Pages.isShown(state) ? "" : "no page";
      case PAGE_SESSION:
      case PAGE_RECORDS:
      case PAGE_RECORD:
      case PAGE_STRINGS:
      case PAGE_SPECIES:
      case PAGE_EFFORT:
      case PAGE_COMMANDS:
        return isAsking ? "answer first" : "";
      default:
        return "";
    }
  }

  /**
   * Of two commands on the same keys, one undoing the other, only one is listed at a time, and what
   * belongs to a page only while there is one.
   */
  boolean isShown(State state) {
    boolean isHalf =
        command.isReason()
            || command == Command.STAND_BY
            || command == Command.RESUME
            || command == Command.TALK_KEY
            || command == Command.TALK_OPEN
            || Pages.isOfPage(command);
    return !isHalf || unavailable(state).isEmpty();
  }

  /** The keys of a command. */
  static String keys(Command command) {
    return ALL.stream()
        .filter(s -> s.command() == command)
        .findFirst()
        .map(Sayable::keys)
        .orElseThrow();
  }

  private static String withBird(State state) {
    return state.record().isEmpty() ? "no bird begun" : "";
  }

  private static boolean isSkipped(State state) {
    return state.question().filter(Question.Skipped.class::isInstance).isPresent();
  }

  private static boolean isTalkOpen(State state) {
    return state.console().attention().talk() == Talk.OPEN;
  }
}
