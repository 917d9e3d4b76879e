package org.calamus.core.form;

import java.util.Objects;
import java.util.Optional;

/**
 * What the species table knows of a species.
 *
 * @param code the alpha code, such as {@code WBNU}
 * @param number the species number as struck on a keypad, such as {@code 7270}
 * @param name the English name
 * @param scientific the scientific name
 * @param bandSizes the recommended band sizes as the table has them
 * @param wing plausible wing chords in millimetres; empty where the table has none
 * @param mass plausible masses in grams; empty where the table has none
 */
public record Species(
    String code,
    String number,
    String name,
    String scientific,
    String bandSizes,
    Optional<Range> wing,
    Optional<Range> mass) {

  /** Checks that the parts are there. */
  public Species {
    Objects.requireNonNull(code);
    Objects.requireNonNull(name);
    Objects.requireNonNull(wing);
    Objects.requireNonNull(mass);
  }
}
