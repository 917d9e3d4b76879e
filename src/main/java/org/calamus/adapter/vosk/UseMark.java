package org.calamus.adapter.vosk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Tells other starts of the program that a cached model is in use.
 *
 * <p>A locked file beside the folder: the system lets go of the lock when a program dies, so a mark
 * left behind is known for what it is. Each holder has its own file, since Java lets one process
 * lock a file only once.
 */
final class UseMark implements AutoCloseable {

  /** For folders that nobody clears away. */
  static final UseMark NONE = new UseMark(null, null);

  private static final String PREFIX = "in-use-";
  private static final String SUFFIX = ".lock";

  private final Path file;
  private final FileChannel channel;

  private UseMark(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /** Marks a folder; call only while holding the cache's lock. */
  static UseMark on(Path folder) throws IOException {
    Path file = Files.createTempFile(folder.getParent(), PREFIX + folder.getFileName(), SUFFIX);
    FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE);
    channel.lock();
    return new UseMark(file, channel);
  }

  /** Whether anybody uses a folder; clears marks left behind. Call while holding the lock. */
  static boolean isOn(Path folder) throws IOException {
    boolean used = false;
    String pattern = PREFIX + folder.getFileName() + "*" + SUFFIX;
    try (DirectoryStream<Path> marks = Files.newDirectoryStream(folder.getParent(), pattern)) {
      for (Path mark : marks) {
        used |= isHeld(mark);
      }
    }
    return used;
  }

  private static boolean isHeld(Path mark) throws IOException {
    try (FileChannel channel = FileChannel.open(mark, StandardOpenOption.WRITE);
        FileLock lock = channel.tryLock()) {
      if (lock == null) {
        return true;
      }
    } catch (OverlappingFileLockException e) {
      return true; // by this very process
    }
    Files.deleteIfExists(mark);
    return false;
  }

  @Override
  public void close() {
    if (channel == null) {
      return;
    }
    try {
      channel.close();
      Files.deleteIfExists(file);
    } catch (IOException e) {
      // the lock is gone with the channel; the next start clears the file away
    }
  }
}
