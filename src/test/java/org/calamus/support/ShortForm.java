package org.calamus.support;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** The short form of the invented station, put where a station keeps its own. */
public final class ShortForm {

  private ShortForm() {}

  /**
   * Puts it into a data folder, which need not exist.
   *
   * @param data the data folder
   */
  public static void into(Path data) throws IOException {
    Path tables = Files.createDirectories(data.resolve("tables"));
    Files.copy(
        Path.of("demo-data", "form.toml"),
        tables.resolve("form.toml"),
        StandardCopyOption.REPLACE_EXISTING);
  }
}
