package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.readback.Course;
import org.calamus.core.readback.Strip;
import org.calamus.core.record.FieldId;

/**
 * What a screen may draw where looking beats reading.
 *
 * @param strips where the measures fall that the bird in the hand has, in a fixed order
 * @param inWork the field in question, or else the one given last; empty where it is none of them
 * @param masses the bird's mass over time; empty where no earlier one is known
 * @param isWeighing whether the mass is asked, in question or was given last
 */
public record Pictures(
    List<Strip> strips, Optional<FieldId> inWork, Optional<Course> masses, boolean isWeighing) {

  /** Copies the list. */
  public Pictures {
    strips = List.copyOf(strips);
  }

  /** Nothing to draw. */
  public static Pictures none() {
    return new Pictures(List.of(), Optional.empty(), Optional.empty(), false);
  }

  /** The strip of the field in work. */
  public Optional<Strip> current() {
    return strips.stream().filter(s -> inWork.equals(Optional.of(s.field()))).findFirst();
  }
}
