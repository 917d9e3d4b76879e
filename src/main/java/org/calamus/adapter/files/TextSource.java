package org.calamus.adapter.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.port.SettingsException;

/** Text files, from the user's folder where there is one of the name, or else from the program. */
final class TextSource {

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private TextSource() {}

  /** The lines of a file of the user's, or of the program's own of the same name. */
  static List<String> lines(Optional<Path> folder, String resourceFolder, String name) {
    Optional<Path> own = own(folder, name);
    return own.isPresent() ? lines(own.get()) : resource(resourceFolder + "/" + name);
  }

  /** Whether the user has a file of a name. */
  static boolean isOwn(Optional<Path> folder, String name) {
    return own(folder, name).isPresent();
  }

  /** Whether the program has a file of its own of a name. */
  static boolean isOurs(String resourceFolder, String name) {
    return TextSource.class.getResource(resourceFolder + "/" + name) != null;
  }

  private static Optional<Path> own(Optional<Path> folder, String name) {
    return folder.map(f -> f.resolve(name)).filter(Files::isRegularFile);
  }

  /** The lines of a file of the user's. */
  static List<String> lines(Path file) {
    try {
      return withoutMark(Files.readAllLines(file, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new SettingsException(
          file + ": cannot be read as UTF-8 text; save it as UTF-8 and check who may read it.");
    }
  }

  /** The name of the file as messages give it: the user's own with its path. */
  static String shown(Optional<Path> folder, String ourFolder, String name) {
    return own(folder, name).map(Path::toString).orElse(ourFolder + "/" + name);
  }

  /** Some editors put a byte order mark before the first line. */
  private static List<String> withoutMark(List<String> lines) {
    if (lines.isEmpty() || !lines.get(0).startsWith(BYTE_ORDER_MARK)) {
      return lines;
    }
    List<String> clean = new ArrayList<>(lines);
    clean.set(0, lines.get(0).substring(1));
    return clean;
  }

  private static List<String> resource(String path) {
    try (InputStream in = TextSource.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new SettingsException(path + ": is missing from the program; get the program anew.");
      }
      return withoutMark(new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
