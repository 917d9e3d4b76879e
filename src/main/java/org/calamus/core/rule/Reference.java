package org.calamus.core.rule;

import java.util.Objects;
import org.calamus.core.form.BandSizes;
import org.calamus.core.form.SpeciesTable;

/**
 * The published tables that the rules go by.
 *
 * @param species the species that the station knows
 * @param ages what the age classes say of the year of birth
 * @param seasons which ages may be stated on which dates
 * @param bandSizes the band sizes with their diameters
 */
public record Reference(
    SpeciesTable species, AgeClasses ages, AgeSeason seasons, BandSizes bandSizes) {

  /** Checks that every part is there. */
  public Reference {
    Objects.requireNonNull(species);
    Objects.requireNonNull(ages);
    Objects.requireNonNull(seasons);
    Objects.requireNonNull(bandSizes);
  }
}
