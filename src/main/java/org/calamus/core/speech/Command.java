package org.calamus.core.speech;

import java.util.Locale;
import java.util.Optional;

/** What can be ordered by a spoken word, in any state. */
public enum Command {
  /** Yes: keep the questioned value, do what was asked. */
  AFFIRM,
  /** No: drop the questioned value. */
  NEGATIVE,
  /** Take back the last value, or give another in its place. */
  CORRECT,
  /** Say the last phrase again. */
  REPEAT,
  /** Read back the whole record, or one field. */
  READBACK,
  /** Read back the field that is asked; by key alone, since the words name the field. */
  READ_FIELD,
  /** Say which fields have no value yet. */
  MISSING,
  /** Say what fits now. */
  HELP,
  /** Empty a field. */
  ERASE,
  /** Go on to the next field and leave this one empty. */
  NEXT,
  /** Go back to the field before. */
  PREVIOUS,
  /** Save the record. */
  SAVE,
  /** Abandon the record. */
  ABANDON,
  /** The skipped bands are used out of order and stay expected. */
  OUT_OF_ORDER,
  /** Act on nothing that is said, until told to go on. */
  STAND_BY,
  /** Listen again. */
  RESUME,
  /** Open the ears for one utterance only, when the talk key is pressed. */
  TALK_KEY,
  /** Keep the ears open. */
  TALK_OPEN,
  /** End the session. */
  END;

  /** The command of a name in a vocabulary file, such as {@code affirm}. */
  static Optional<Command> named(String name) {
    for (Command command : values()) {
      if (command.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(name)) {
        return Optional.of(command);
      }
    }
    return Optional.empty();
  }
}
