package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.sqlite.SQLiteJDBCLoader;

/**
 * Keeps the driver's native library in a folder of the application. The driver unpacks a copy of 1
 * MB at each start and removes it at the end, but not when the process is killed.
 */
final class NativeLibrary {

  /** Longer than any start takes between unpacking a copy and loading it. */
  private static final Duration IN_THE_MAKING = Duration.ofMinutes(1);

  private static final String FOLDER = "org.sqlite.tmpdir";

  private NativeLibrary() {}

  /** Where the driver unpacks. */
  static String folder() {
    return System.getProperty(FOLDER, System.getProperty("java.io.tmpdir"));
  }

  /**
   * Tells the driver where to unpack and removes what killed processes left there. To be called
   * before the first connection; later calls of a process change nothing.
   *
   * @param folder made where it is missing
   * @throws IOException where it cannot be used
   */
  static void unpackTo(Path folder) throws IOException {
    Files.createDirectories(folder);
    System.setProperty(FOLDER, folder.toAbsolutePath().toString());
    // by the file system's own time, which wrote the other side of the comparison
    Path mark = Files.createTempFile(folder, "now-", ".tmp");
    Instant limit = Files.getLastModifiedTime(mark).toInstant().minus(IN_THE_MAKING);
    Files.delete(mark);
    String ours = "sqlite-" + SQLiteJDBCLoader.getVersion() + "-*";
    try (DirectoryStream<Path> copies = Files.newDirectoryStream(folder, ours)) {
      for (Path copy : copies) {
        if (Files.getLastModifiedTime(copy).toInstant().isBefore(limit)) {
          removeUnlessInUse(copy);
        }
      }
    }
  }

  private static void removeUnlessInUse(Path copy) {
    try {
      // a copy that is loaded goes on working without its name, except on Windows, which keeps it
      Files.deleteIfExists(copy);
    } catch (IOException e) {
      // in use, or not ours to remove: it only takes space
    }
  }
}
