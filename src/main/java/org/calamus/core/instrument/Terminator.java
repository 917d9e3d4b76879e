package org.calamus.core.instrument;

/** The characters that end a line of an instrument. */
public enum Terminator {
  /** A carriage return. */
  CR("CR"),
  /** A line feed. */
  LF("LF"),
  /** A carriage return and a line feed, together only. */
  CR_LF("CR LF"),
  /** Any of the three; the empty line between the two of a pair is passed over. */
  ANY("any");

  private final String word;

  Terminator(String word) {
    this.word = word;
  }

  /** The word by which a device file names it. */
  public String word() {
    return word;
  }

  /** Whether this character, behind those already gathered, ends the line. */
  boolean isEndedBy(CharSequence gathered, char next) {
    return switch (this) {
      case CR -> next == '\r';
      case LF -> next == '\n';
      case ANY -> next == '\r' || next == '\n';
      case CR_LF ->
          next == '\n' && gathered.length() > 0 && gathered.charAt(gathered.length() - 1) == '\r';
    };
  }

  /** How many of the characters already gathered belong to the terminator. */
  int gatheredPart() {
    return this == CR_LF ? 1 : 0;
  }
}
