package org.calamus.core.speech;

import java.util.List;
import java.util.Optional;
import org.calamus.core.record.FieldId;

/** What an utterance means. */
public sealed interface Meaning {

  /**
   * Values for one or more fields.
   *
   * @param items the values in the order said
   * @param isCorrection whether the first takes the place of one given before
   */
  record Values(List<Item> items, boolean isCorrection) implements Meaning {
    /** Copies the list. */
    public Values {
      items = List.copyOf(items);
    }
  }

  /**
   * A field and what was heard for it.
   *
   * @param field the field; empty where none was named
   * @param heard what was heard for the named field, or for the one asked
   */
  record Item(Optional<FieldId> field, Heard heard) {}

  /**
   * A field named without a value: it shall be asked.
   *
   * @param field the field
   */
  record Open(FieldId field) implements Meaning {}

  /**
   * A command.
   *
   * @param command the command
   * @param field the field it is about, where one was named
   */
  record Order(Command command, Optional<FieldId> field) implements Meaning {}

  /**
   * A saved record shall be corrected.
   *
   * @param digits the last digits of its band, or all of them
   */
  record Amend(String digits) implements Meaning {}

  /**
   * Speech that is not understood.
   *
   * @param hint why or how to say it; may be empty
   */
  record Unclear(String hint) implements Meaning {}

  /** Sound that was not meant for the console. */
  record Chatter() implements Meaning {}
}
