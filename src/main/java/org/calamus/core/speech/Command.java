package org.calamus.core.speech;

import java.util.Locale;
import java.util.Optional;
import org.calamus.core.record.Amendment;

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
  /** Enter that nets were opened. */
  OPEN_NETS,
  /** Enter that nets were closed. */
  CLOSE_NETS,
  /** Open a saved record again to correct it. */
  AMEND,
  /** The console had heard another word. */
  REASON_MISHEARD,
  /** Another key had been struck. */
  REASON_MISKEYED,
  /** The band or an instrument had been read wrongly. */
  REASON_MISREAD,
  /** The value had gone into the wrong field. */
  REASON_WRONG_FIELD,
  /** The bird was identified anew. */
  REASON_IDENTIFIED_ANEW,
  /** The reason is another, told in a memo. */
  REASON_OTHER,
  /** Show the capture screen again. */
  PAGE_CAPTURE,
  /** Show the rows behind those that are shown. */
  PAGE_ON,
  /** Show the rows before those that are shown. */
  PAGE_BACK,
  /** Choose the next row that can be chosen. */
  PAGE_CHOOSE,
  /** Show how the session stands. */
  PAGE_SESSION,
  /** Show the records of the day. */
  PAGE_RECORDS,
  /** Show one record whole: the one that is chosen, or else the last. */
  PAGE_RECORD,
  /** Show the accounts of the band strings. */
  PAGE_STRINGS,
  /** Show how many birds of which species were caught. */
  PAGE_SPECIES,
  /** Show the net-hours. */
  PAGE_EFFORT,
  /** Show everything that may be said and struck now. */
  PAGE_COMMANDS,
  /** End the session. */
  END;

  private static final String REASON = "REASON_";

  /** Whether it tells why a saved record is corrected; nothing else listens for those. */
  public boolean isReason() {
    return name().startsWith(REASON);
  }

  /** The reason that it tells. */
  public Optional<Amendment.Reason> reason() {
    return isReason()
        ? Optional.of(Amendment.Reason.valueOf(name().substring(REASON.length())))
        : Optional.empty();
  }

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
