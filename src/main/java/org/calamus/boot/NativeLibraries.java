package org.calamus.boot;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.net.URLConnection;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;

/**
 * Keeps the recogniser's native library unpacked between two starts: it is 26 MB, and unpacking it
 * anew took a third of a second at each start.
 */
final class NativeLibraries {

  private static final String PATH = "jna.library.path";

  private NativeLibraries() {}

  /**
   * Unpacks the recogniser's library into a folder unless it is there, and has it loaded from
   * there. Where that cannot be done, it is unpacked at each start as usual. To be called before
   * the recogniser is first used.
   */
  static void keepRecogniser(Path folder) {
    String resource = resource();
    URL packed = NativeLibraries.class.getResource(resource);
    if (packed == null || System.getProperty(PATH) != null) {
      return;
    }
    try {
      Path kept = folder.resolve(resource.substring(resource.lastIndexOf('/') + 1));
      URLConnection connection = packed.openConnection();
      if (!Files.exists(kept) || Files.size(kept) != connection.getContentLengthLong()) {
        unpack(connection, kept);
      }
      System.setProperty(PATH, folder.toAbsolutePath().toString());
    } catch (IOException e) {
      return; // no room or no permission: the library is unpacked elsewhere, as usual
    }
  }

  /** Written beside its place and moved there in one step, so that no start finds half of it. */
  private static void unpack(URLConnection connection, Path kept) throws IOException {
    Files.createDirectories(kept.getParent());
    Path beside = Files.createTempFile(kept.getParent(), kept.getFileName().toString(), ".part");
    try (InputStream in = connection.getInputStream()) {
      Files.copy(in, beside, StandardCopyOption.REPLACE_EXISTING);
      Files.move(beside, kept, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  /** Where the jar has the library of this computer; an empty name where it is not known. */
  private static String resource() {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    String processor = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
    if (system.contains("linux") && processor.equals("amd64")) {
      return "/linux-x86-64/libvosk.so";
    }
    return system.contains("mac") ? "/darwin/libvosk.dylib" : "/no-such-library";
  }
}
