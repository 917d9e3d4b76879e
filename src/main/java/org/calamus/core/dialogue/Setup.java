package org.calamus.core.dialogue;

import java.time.ZoneId;
import java.util.Map;
import java.util.Objects;
import org.calamus.core.form.Form;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.readback.Phrases;
import org.calamus.core.rule.Rules;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.Interpreter;

/**
 * What a session works with; it does not change while the session runs.
 *
 * @param form the fields and their order
 * @param rules the rules
 * @param interpreter makes meaning of words
 * @param grammars what to listen for
 * @param station the place and the people
 * @param devices the instruments, by name
 */
public record Setup(
    Form form,
    Rules rules,
    Interpreter interpreter,
    Grammars grammars,
    Station station,
    Map<String, DeviceDescription> devices) {

  /** Copies the map. */
  public Setup {
    Objects.requireNonNull(form);
    Objects.requireNonNull(rules);
    Objects.requireNonNull(interpreter);
    Objects.requireNonNull(grammars);
    Objects.requireNonNull(station);
    devices = Map.copyOf(devices);
  }

  /** The words for values. */
  public Phrases phrases() {
    return new Phrases(form);
  }

  /**
   * Where and by whom.
   *
   * @param place the station's name
   * @param bander the bander's initials
   * @param zone the station's time zone, for the screen; records are kept in UTC
   */
  public record Station(String place, String bander, ZoneId zone) {}
}
