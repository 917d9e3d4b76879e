package org.calamus.port;

import java.util.List;
import org.calamus.core.form.BandSizes;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.EuringField;
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
   * A code table in the Laboratory's codes.
   *
   * @param name its name, such as {@code age}
   * @throws SettingsException naming every file and line that cannot be used
   */
  default CodeTable codes(String name) {
    return codes(name, CodeSet.LABORATORY);
  }

  /**
   * A code table in the codes of a set.
   *
   * @param name its name, which is that of its field in files, such as {@code how-aged}
   * @param set the set
   * @throws SettingsException naming every file and line that cannot be used
   */
  CodeTable codes(String name, CodeSet set);

  /**
   * The band sizes.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  BandSizes bandSizes();

  /**
   * The fields of an EURING record, in their order.
   *
   * @throws SettingsException naming every file and line that cannot be used
   */
  List<EuringField> euringFields();

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
