package org.calamus.core.rule;

import java.util.Objects;
import org.calamus.core.form.SpeciesTable;

/**
 * The published tables that the rules go by.
 *
 * @param species the species that the station knows
 * @param ages what the age classes say of the year of birth
 * @param seasons which ages may be stated on which dates
 */
public record Reference(SpeciesTable species, AgeClasses ages, AgeSeason seasons) {

  /** Checks that every part is there. */
  public Reference {
    Objects.requireNonNull(species);
    Objects.requireNonNull(ages);
    Objects.requireNonNull(seasons);
  }
}
