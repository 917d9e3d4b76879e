package org.calamus.boot;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where things are kept.
 *
 * @param givenData the data folder where the user gave one
 * @param givenCache the cache folder where the user gave one
 */
record Folders(Optional<Path> givenData, Optional<Path> givenCache) {

  /**
   * The records, the settings, and the user's own vocabularies, tables and devices.
   *
   * @throws Halt where none is given and the system names no home folder
   */
  Path data() {
    return givenData.orElseGet(Folders::atHome);
  }

  private static Path atHome() {
    Path home = Path.of(System.getProperty("user.home"));
    if (!home.isAbsolute()) {
      // Java says "?" for a user without a home; a folder of that name would hold the records
      throw new Halt(
          ExitCode.MISSING, "This user has no home folder: give a folder with --data.", null);
    }
    return home.resolve(".calamus");
  }

  /** What can be built anew: the recogniser's model and unpacked native libraries. */
  Path cache() {
    return givenCache.orElseGet(() -> data().resolve("cache"));
  }

  /** Native libraries that are unpacked at run time. */
  Path natives() {
    return cache().resolve("natives");
  }

  /** What must not appear on the screen. */
  Path log() {
    return data().resolve("calamus.log");
  }

  /** The user's own vocabularies. */
  Path words() {
    return data().resolve("grammars");
  }

  /** The user's own tables. */
  Path tables() {
    return data().resolve("tables");
  }

  /** The user's own device descriptions. */
  Path devices() {
    return data().resolve("devices");
  }

  /** What the station wrote about itself. */
  Path station() {
    return data().resolve("station.toml");
  }
}
