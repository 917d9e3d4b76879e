package org.calamus.port;

import org.calamus.core.form.CodeTable;
import org.calamus.core.form.SpeciesTable;

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
}
