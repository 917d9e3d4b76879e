package org.calamus.adapter.files;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A small file of a few things, a line each, which is written anew: beside, synced and renamed, so
 * that it is never half written. Nobody needs it, so that what cannot be read is as if it were not
 * there.
 */
final class LineFile {

  private LineFile() {}

  /**
   * What the file holds; nothing where it cannot be read.
   *
   * @param read makes a thing of a line; empty where the line is none that was written here
   */
  static <T> List<T> read(Path file, Function<String, Optional<T>> read) {
    try (Stream<String> lines = Files.lines(file, StandardCharsets.UTF_8)) {
      return lines.flatMap(line -> read.apply(line).stream()).toList();
    } catch (IOException | UncheckedIOException e) {
      return List.of();
    }
  }

  /**
   * Puts things in the place of what was there; makes the folder where there is none.
   *
   * @param written makes a line of a thing
   */
  static <T> void write(Path file, List<T> things, Function<T, String> written) throws IOException {
    String text = things.stream().map(t -> written.apply(t) + "\n").collect(Collectors.joining());
    Path fresh = file.resolveSibling(file.getFileName() + ".part");
    Files.createDirectories(file.toAbsolutePath().getParent());
    ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    try (FileChannel channel =
        FileChannel.open(
            fresh,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE)) {
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }
}
