package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a small file anew: beside, synced and renamed, so that it is never half written. */
final class FreshFile {

  private FreshFile() {}

  /** Puts a text in the place of what was there; makes the folder where there is none. */
  static void write(Path file, String text) throws IOException {
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
