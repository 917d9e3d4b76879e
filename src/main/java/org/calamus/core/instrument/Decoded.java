package org.calamus.core.instrument;

import java.util.Objects;
import org.calamus.core.record.Reading;

/** What a line of an instrument turned out to be. */
public sealed interface Decoded {

  /**
   * A value.
   *
   * @param reading the value with its line
   */
  record Measured(Reading reading) implements Decoded {
    /** Checks that it is there. */
    public Measured {
      Objects.requireNonNull(reading);
    }
  }

  /**
   * Nothing to act on: a damaged line, an unknown one, or one that the description passes over.
   *
   * @param line what came
   * @param why why it is passed over
   */
  record Noise(String line, String why) implements Decoded {
    /** Checks that both parts are there. */
    public Noise {
      Objects.requireNonNull(line);
      Objects.requireNonNull(why);
    }
  }

  /**
   * The instrument says that something is wrong.
   *
   * @param sentence what is wrong and what to do next
   */
  record Fault(String sentence) implements Decoded {
    /** Checks that it is there. */
    public Fault {
      Objects.requireNonNull(sentence);
    }
  }
}
