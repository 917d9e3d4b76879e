package org.calamus.core.dialogue;

import java.util.Objects;

/**
 * What the words of an utterance were understood as, before any rule was asked.
 *
 * @param kind of what kind it was
 * @param what the values as {@code WING=93}, parted by blanks; a command and its field; a field's
 *     name; else empty. Of a number that sounds like another both are named, as {@code WING=15|50};
 *     a value that was not made out is {@code ?}
 */
public record Understood(Kind kind, String what) {

  /** The kinds of meaning. */
  public enum Kind {
    /** Nobody listened: the voice spoke, the console was paused or waited for the talk key. */
    UNHEEDED,
    /** Sound that was not meant for the console. */
    NOTHING,
    /** Speech that was not understood. */
    UNCLEAR,
    /** Values for one or more fields. */
    VALUES,
    /** A field's name: it shall be asked. */
    FIELD,
    /** A command. */
    COMMAND
  }

  /** Checks the parts. */
  public Understood {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(what);
  }

  static Understood of(Kind kind) {
    return new Understood(kind, "");
  }
}
