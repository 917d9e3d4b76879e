package org.calamus.core.speech;

import java.time.Month;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.calamus.core.record.FieldId;

/** What a spoken form of a vocabulary means. */
public sealed interface Token {

  /** The number that it stands for by itself; empty where it stands for none. */
  default OptionalInt number() {
    return OptionalInt.empty();
  }

  /**
   * A digit said by itself.
   *
   * @param value 0 to 9
   */
  record Digit(int value) implements Token {
    @Override
    public OptionalInt number() {
      return OptionalInt.of(value);
    }
  }

  /**
   * A number from ten to nineteen.
   *
   * @param value 10 to 19
   */
  record Teen(int value) implements Token {
    @Override
    public OptionalInt number() {
      return OptionalInt.of(value);
    }
  }

  /**
   * A multiple of ten.
   *
   * @param value 20, 30 ... 90
   */
  record Tens(int value) implements Token {
    @Override
    public OptionalInt number() {
      return OptionalInt.of(value);
    }
  }

  /** The word "hundred". */
  record Hundred() implements Token {}

  /** The words "hundred and", behind which more must come. */
  record HundredAnd() implements Token {}

  /** The words "hundred hours", which end a time. */
  record HundredHours() implements Token {}

  /**
   * A day of the month by its place, as "sixteenth"; of "twenty first" the last word.
   *
   * @param value 1 to 20, or 30
   */
  record Ordinal(int value) implements Token {
    @Override
    public OptionalInt number() {
      return OptionalInt.of(value);
    }
  }

  /**
   * A month by its name.
   *
   * @param month the month
   */
  record MonthName(Month month) implements Token {}

  /**
   * A word of the spelling alphabet that is the name of a month, too: november. It is the month
   * where a date is asked or was named, and else the letter.
   *
   * @param letter the letter
   * @param month the month
   */
  record LetterOrMonth(Letter letter, MonthName month) implements Token {}

  /** The decimal point. */
  record Point() implements Token {}

  /**
   * A letter of the spelling alphabet.
   *
   * @param letter A to Z
   */
  record Letter(char letter) implements Token {}

  /**
   * The name of a field.
   *
   * @param field the field
   */
  record Field(FieldId field) implements Token {}

  /**
   * A code in words.
   *
   * @param fields the fields it may belong to; empty where it belongs to the one that is asked
   * @param code the code
   */
  record CodeWords(Set<FieldId> fields, String code) implements Token {
    /** Copies the set. */
    public CodeWords {
      fields = Set.copyOf(fields);
    }

    /**
     * The field that it is for while another, or none, is asked; empty where it could be several.
     */
    Optional<FieldId> fieldWhile(Optional<FieldId> asked) {
      return asked
          .filter(fields::contains)
          .or(() -> fields.size() == 1 ? fields.stream().findFirst() : Optional.empty());
    }
  }

  /**
   * Words that are the name of a field, and a code while one of the code's fields is asked: "skull"
   * names the field of the skull score, and says how the bird was aged.
   *
   * @param name the field that they name
   * @param words the code, which belongs to certain fields
   */
  record NameOrCode(Field name, CodeWords words) implements Token {}

  /**
   * A command.
   *
   * @param command the command
   */
  record Order(Command command) implements Token {}

  /** Words that mean nothing here. */
  record Nothing() implements Token {}
}
