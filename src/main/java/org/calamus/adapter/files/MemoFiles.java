package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.calamus.port.Memos;

/**
 * Keeps memos in the folder {@code memos} of the data folder, as WAV files of 16 kHz, one channel,
 * 16 bit.
 *
 * <p>A memo is written as {@code 12-1.wav.part}, synced, and then renamed; no memo takes the name
 * of another. What a killed session left behind is somebody's words about a bird: it is kept as
 * {@code 12-1.cut.wav}, and no record names it. One without sound is removed.
 */
public final class MemoFiles implements Memos {

  private static final String FOLDER_NAME = "memos";
  private static final String UNFINISHED = ".part";
  private static final String ENDING = ".wav";
  private static final Pattern NAME = Pattern.compile("[0-9A-Za-z-]{1,60}\\.wav");

  private final Path folder;

  /**
   * Memos in a data folder that this process holds alone; what an earlier session left unfinished
   * is put in order.
   *
   * @param data the data folder; the folder in it is made with the first memo
   */
  public MemoFiles(Path data) {
    this.folder = data.resolve(FOLDER_NAME);
    for (Path left : unfinished()) {
      putInOrder(left);
    }
  }

  @Override
  public Place named(String fileName) {
    if (!NAME.matcher(fileName).matches()) {
      throw new IllegalArgumentException("no name for a memo: " + fileName);
    }
    return () -> begin(fileName);
  }

  private Recording begin(String fileName) {
    try {
      Files.createDirectories(folder);
      return new MemoFile(folder.resolve(fileName + UNFINISHED), () -> free(fileName));
    } catch (IOException e) {
      throw MemoFile.failure(folder, e);
    }
  }

  /** The name, or one like it that no memo has yet: a record of long ago may refer to that one. */
  private Path free(String fileName) {
    String stem = fileName.substring(0, fileName.length() - ENDING.length());
    Path free = folder.resolve(fileName);
    for (int i = 2; Files.exists(free); i++) {
      free = folder.resolve(stem + "-" + i + ENDING);
    }
    return free;
  }

  private List<Path> unfinished() {
    List<Path> all = new ArrayList<>();
    if (Files.isDirectory(folder)) {
      try (DirectoryStream<Path> left =
          Files.newDirectoryStream(folder, "*" + ENDING + UNFINISHED)) {
        left.forEach(all::add);
      } catch (IOException | java.nio.file.DirectoryIteratorException e) {
        // they stay as they are, and the first memo will tell what is wrong with the folder
        return List.of();
      }
    }
    return all;
  }

  private void putInOrder(Path left) {
    String name = left.getFileName().toString();
    String stem = name.substring(0, name.length() - (ENDING + UNFINISHED).length());
    try {
      if (MemoFile.repair(left)) {
        Files.move(left, free(stem + ".cut" + ENDING));
      } else {
        Files.delete(left);
      }
    } catch (IOException e) {
      // stays as it is until the next start: no session shall fail for the sake of an old memo
      return;
    }
  }
}
