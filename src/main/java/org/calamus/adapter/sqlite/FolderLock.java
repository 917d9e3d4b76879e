package org.calamus.adapter.sqlite;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.calamus.port.RecordStore.StoreException;

/**
 * Keeps a second Calamus out of a data folder. The operating system lets go of the lock when the
 * process ends, however it ends; the file itself stays and does no harm.
 */
final class FolderLock implements AutoCloseable {

  static final String FILE_NAME = "calamus.lock";

  /** Behind the text, since Windows lets nobody read a locked stretch of a file. */
  private static final long LOCKED_BYTE = 1L << 30;

  /**
   * The folders this process holds. POSIX drops all locks of a process on a file as soon as the
   * process closes any channel to that file, so a folder that is held here must never be tried a
   * second time (fcntl(2), "Record locks").
   */
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

  private final Path folder;
  private final FileChannel channel;

  private FolderLock(Path folder, FileChannel channel) {
    this.folder = folder;
    this.channel = channel;
  }

  /**
   * Takes the lock of a folder.
   *
   * @throws IOException where the lock file cannot be made
   * @throws StoreException where somebody holds it
   */
  static FolderLock take(Path folder) throws IOException {
    Path real = folder.toRealPath();
    if (!HELD_HERE.add(real)) {
      throw taken(Optional.of(ProcessHandle.current().pid()));
    }
    boolean isTaken = false;
    try {
      FolderLock lock = new FolderLock(real, lockedChannel(real.resolve(FILE_NAME)));
      isTaken = true;
      return lock;
    } finally {
      if (!isTaken) {
        HELD_HERE.remove(real);
      }
    }
  }

  /** The process that holds the folder, as far as its lock file tells; takes no lock itself. */
  static Optional<Long> holder(Path folder) throws IOException {
    if (HELD_HERE.contains(folder.toRealPath())) {
      return Optional.of(ProcessHandle.current().pid());
    }
    Path file = folder.resolve(FILE_NAME);
    if (!Files.isRegularFile(file)) {
      return Optional.empty();
    }
    return pid(Files.readString(file, StandardCharsets.US_ASCII))
        .filter(p -> ProcessHandle.of(p).isPresent());
  }

  /** Lets go of the folder. */
  @Override
  public void close() throws IOException {
    try (channel) {
      channel.truncate(0);
    } finally {
      HELD_HERE.remove(folder);
    }
  }

  private static FileChannel lockedChannel(Path file) throws IOException {
    FileChannel channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    boolean isLocked = false;
    try {
      FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
      if (lock == null) {
        throw taken(read(channel));
      }
      channel.truncate(0);
      String own = Long.toString(ProcessHandle.current().pid()) + "\n";
      channel.write(ByteBuffer.wrap(own.getBytes(StandardCharsets.US_ASCII)), 0);
      isLocked = true;
      return channel;
    } catch (OverlappingFileLockException e) {
      throw taken(Optional.of(ProcessHandle.current().pid()));
    } finally {
      if (!isLocked) {
        channel.close();
      }
    }
  }

  private static Optional<Long> read(FileChannel channel) throws IOException {
    ByteBuffer text = ByteBuffer.allocate(32);
    channel.read(text, 0);
    return pid(new String(text.array(), 0, text.position(), StandardCharsets.US_ASCII));
  }

  private static Optional<Long> pid(String text) {
    String digits = text.strip();
    return digits.matches("\\d{1,18}") ? Optional.of(Long.parseLong(digits)) : Optional.empty();
  }

  private static StoreException taken(Optional<Long> pid) {
    return new StoreException(
        "Another Calamus"
            + pid.map(p -> " (process " + p + ")").orElse("")
            + " is using this folder: close it or give another folder with --data");
  }
}
