package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Locale;

/** Says in one line how the records of a folder are. */
final class Health {

  private static final String WHAT = "The records cannot be checked";
  private static final double KILOBYTE = 1e3;
  private static final double GIGABYTE = 1e9;

  private Health() {}

  /** Looks at a folder; takes no lock and changes nothing. */
  static String of(Path folder) {
    try {
      Path file = folder.resolve(Database.FILE_NAME);
      if (!Files.exists(folder)) {
        return "no records yet; the folder " + folder + " will be made";
      }
      if (!Files.exists(file)) {
        return "no records yet; " + free(folder);
      }
      String size = String.format(Locale.ROOT, "%.0f kB", Files.size(file) / KILOBYTE);
      return Database.inspect(WHAT, file, c -> records(file, c))
          + "; "
          + size
          + "; "
          + free(folder)
          + user(folder);
    } catch (IOException e) {
      throw Failure.ofFolder(folder, e);
    }
  }

  private static String records(Path file, Connection connection) throws SQLException {
    int version = Schema.CURRENT.check(WHAT, file, connection);
    if (version == 0) {
      return "no records yet";
    }
    Database.checked(WHAT, file, connection);
    History history = new History(connection);
    return history.countSaved()
        + " saved, "
        + history.countOpen()
        + " unfinished; schema version "
        + version;
  }

  private static String free(Path folder) throws IOException {
    double bytes = Files.getFileStore(folder).getUsableSpace();
    return String.format(Locale.ROOT, "%.1f GB free in %s", bytes / GIGABYTE, folder);
  }

  private static String user(Path folder) throws IOException {
    return FolderLock.holder(folder).map(pid -> "; in use by process " + pid).orElse("");
  }
}
