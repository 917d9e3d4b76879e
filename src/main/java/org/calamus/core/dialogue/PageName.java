package org.calamus.core.dialogue;

import java.util.Arrays;
import java.util.Optional;
import org.calamus.core.speech.Command;

/** The pages beside the capture screen. */
enum PageName {
  /** How the session stands. */
  SESSION(Command.PAGE_SESSION, "Session", "session overview"),
  /** The records of the day. */
  RECORDS(Command.PAGE_RECORDS, "Records of the day", "daily records"),
  /** The accounts of the band strings. */
  STRINGS(Command.PAGE_STRINGS, "Band strings", "string accounts"),
  /** The birds by species and by hour. */
  SPECIES(Command.PAGE_SPECIES, "Species", "species summary"),
  /** When the nets were open, and what that comes to. */
  EFFORT(Command.PAGE_EFFORT, "Net-hours", "netting effort"),
  /** The species with the numbers that are struck for them. */
  NUMBERS(Command.PAGE_NUMBERS, "Species by number", "species numbers"),
  /** All that can be said and struck. */
  COMMANDS(Command.PAGE_COMMANDS, "What can be said and struck", "available commands");

  private final Command command;
  private final String title;
  private final String spoken;

  PageName(Command command, String title, String spoken) {
    this.command = command;
    this.title = title;
    this.spoken = spoken;
  }

  /** The page that a command shows; empty where it shows none. */
  static Optional<PageName> shownBy(Command command) {
    return Arrays.stream(values()).filter(p -> p.command == command).findFirst();
  }

  /** The title on the screen. */
  String title() {
    return title;
  }

  /** What is said when the page is opened. */
  String spoken() {
    return spoken;
  }
}
