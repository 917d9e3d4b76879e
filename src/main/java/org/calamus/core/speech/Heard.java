package org.calamus.core.speech;

import java.util.List;
import java.util.Objects;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldValue;

/** What the words for one field come to. */
public sealed interface Heard {

  /**
   * One value.
   *
   * @param value the value
   */
  record One(FieldValue value) implements Heard {
    /** Checks that there is a value. */
    public One {
      Objects.requireNonNull(value);
    }
  }

  /**
   * A band of which only the last digits were given: it is of the string that is expected.
   *
   * @param value the whole number, of the string that is expected
   * @param digits the digits given
   */
  record Ending(BandNumber value, String digits) implements Heard {}

  /**
   * A value that sounds like others, such as fifteen like fifty. It may be taken only where the
   * rules accept it and none of the others.
   *
   * @param value the value heard
   * @param others the values that sound like it, at least one
   */
  record Twins(FieldValue value, List<FieldValue> others) implements Heard {

    /** Copies the list. */
    public Twins {
      others = List.copyOf(others);
    }

    /** A value with a single other. */
    Twins(FieldValue value, FieldValue other) {
      this(value, List.of(other));
    }
  }

  /**
   * Words that nobody says for a number, such as "eighteen nine": the value that sounds like them,
   * and the one that they would be with the point that may be missing. The first is taken where the
   * rules accept it and not the other; it is read back like any value.
   *
   * @param value what was probably said: 89
   * @param other what else it may have been: 18.9
   */
  record Perhaps(FieldValue value, FieldValue other) implements Heard {}

  /**
   * No value.
   *
   * @param hint how to say it, short, as spoken and as shown
   */
  record No(String hint) implements Heard {}
}
