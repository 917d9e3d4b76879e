package org.calamus.core.instrument;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Unit;

/**
 * All that Calamus knows of a kind of instrument; a file under {@code devices/} says it.
 *
 * @param name the name of the file without its ending, by which the user chooses it
 * @param title a few words for the screen
 * @param port how to open the port
 * @param framing how the bytes fall into lines
 * @param format what the lines mean
 * @param polling how to ask, where the instrument speaks only when asked
 * @param silenceLimit how long it may say nothing before it is reported as silent; empty for one
 *     that speaks only when its button is pressed
 * @param field the field that its values fill, {@link FieldId#MASS} or {@link FieldId#WING}
 * @param rule when a value is to be believed
 */
public record DeviceDescription(
    String name,
    String title,
    PortSettings port,
    Framing framing,
    LineFormat format,
    Optional<Polling> polling,
    Optional<Duration> silenceLimit,
    FieldId field,
    StabilityRule rule) {

  /** Checks that the field is a measured one and that every unit can fill it. */
  public DeviceDescription {
    Objects.requireNonNull(name);
    Objects.requireNonNull(title);
    Objects.requireNonNull(port);
    Objects.requireNonNull(framing);
    Objects.requireNonNull(polling);
    Objects.requireNonNull(silenceLimit);
    Objects.requireNonNull(rule);
    Unit wanted = unitOf(field);
    if (!format.units().values().stream().allMatch(unit -> unit.ours() == wanted)) {
      throw new IllegalArgumentException("a unit of the instrument cannot fill the field");
    }
    if (polling.isPresent() && rule instanceof StabilityRule.EachReading) {
      throw new IllegalArgumentException(
          "an instrument that is asked again and again cannot have each reading believed");
    }
  }

  /**
   * The unit in which a field is measured.
   *
   * @throws IllegalArgumentException for a field that no instrument can fill
   */
  public static Unit unitOf(FieldId field) {
    return switch (field) {
      case MASS -> Unit.GRAM;
      case WING -> Unit.MILLIMETRE;
      default -> throw new IllegalArgumentException("no instrument can fill the field " + field);
    };
  }
}
