package org.calamus.port;

/** Reads what a station wrote down about itself. */
@FunctionalInterface
public interface Stations {
  /**
   * The station's settings; the usual ones where it wrote none.
   *
   * @throws SettingsException naming file and line of everything that cannot be used
   */
  StationSettings read();
}
