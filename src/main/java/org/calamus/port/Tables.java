package org.calamus.port;

import org.calamus.core.form.CodeTable;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.rule.AgeClasses;
import org.calamus.core.rule.AgeSeason;
import org.calamus.core.rule.BandLetters;

/** Reads the species and code tables. */
public interface Tables {
  /**
   * The station's species.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  SpeciesTable species();

  /**
   * A code table.
   *
   * @param name its name, such as {@code age}
   * @throws SettingsException naming every file and line that cannot be used
   */
  CodeTable codes(String name);

  /**
   * What the age classes say of a bird's year of birth.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  AgeClasses ageClasses();

  /**
   * Which ages may be stated on which dates.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  AgeSeason ageSeason();

  /**
   * The letters of hummingbird bands.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  BandLetters bandLetters();
}
