package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Sees to it that the utterances of all sessions take no more room than the station gave them: the
 * oldest sessions go first, never the one that runs. Only files that were written here are removed;
 * a folder that holds anything else stays with it.
 */
final class KeptSpace {

  private final long most;
  private final long leastFree;
  private final Path all;
  private final Deque<Path> oldest;
  private long used;

  /**
   * Looks through the folder of all sessions.
   *
   * @param most how many bytes they may take
   * @param leastFree how many bytes are left free on the disk, for the records
   * @param running the session that runs
   */
  KeptSpace(Path all, Path running, long most, long leastFree) throws IOException {
    this.all = all;
    this.most = most;
    this.leastFree = leastFree;
    List<Path> sessions = new ArrayList<>();
    for (Path folder : children(all)) {
      if (SessionFolder.isSession(folder)
          && Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
          && !folder.equals(running)) {
        sessions.add(folder);
        used += sizeOf(folder);
      }
    }
    sessions.sort(Comparator.comparing(f -> f.getFileName().toString()));
    this.oldest = new ArrayDeque<>(sessions);
  }

  /**
   * Makes room for so many bytes more.
   *
   * @return whether there is room now
   */
  boolean makeRoom(long bytes) throws IOException {
    while (used + bytes > most && !oldest.isEmpty()) {
      used -= remove(oldest.remove());
    }
    return used + bytes <= most;
  }

  /** Whether the disk has enough left for the records. */
  boolean isDiskRoomy() throws IOException {
    return Files.getFileStore(all).getUsableSpace() >= leastFree;
  }

  /** So many bytes were written. */
  void took(long bytes) {
    used += bytes;
  }

  /** Removes a session; gives how many bytes that freed. */
  private static long remove(Path folder) throws IOException {
    long freed = 0;
    boolean isAllOurs = true;
    for (Path file : children(folder)) {
      if (SessionFolder.isOurs(file)) {
        freed += Files.size(file);
        Files.delete(file);
      } else {
        isAllOurs = false;
      }
    }
    if (isAllOurs) {
      Files.delete(folder);
    }
    return freed;
  }

  private static long sizeOf(Path folder) throws IOException {
    long size = 0;
    for (Path file : children(folder)) {
      size += SessionFolder.isOurs(file) ? Files.size(file) : 0;
    }
    return size;
  }

  private static List<Path> children(Path folder) throws IOException {
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> children = Files.newDirectoryStream(folder)) {
      children.forEach(found::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return found;
  }
}
