package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.function.Supplier;
import org.calamus.port.Memos;
import org.calamus.port.Memos.MemoException;

/**
 * A memo that is being written. Its header is put right with every block, so that what is there can
 * be played whenever the process is killed.
 */
final class MemoFile implements Memos.Recording {

  private static final long NEXT_TO_NOTHING_BYTES = 128 * 1024;

  private final Path file;
  private final Supplier<Path> finalName;
  private final FileChannel channel;
  private long soundBytes;
  private boolean isKept;

  /**
   * Begins the file.
   *
   * @param file where to write until it is kept; what is there is overwritten
   * @param finalName says where it goes when it is kept
   */
  MemoFile(Path file, Supplier<Path> finalName) throws IOException {
    this.file = file;
    this.finalName = finalName;
    this.channel =
        FileChannel.open(
            file,
            StandardOpenOption.CREATE,
            StandardOpenOption.TRUNCATE_EXISTING,
            StandardOpenOption.WRITE);
  }

  /**
   * Puts the header of a file right that was cut short.
   *
   * @return whether there is sound in it
   */
  static boolean repair(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      long whole =
          Math.max(0, channel.size() - WavHeader.BYTES)
              / WavHeader.BYTES_A_SAMPLE
              * WavHeader.BYTES_A_SAMPLE;
      write(channel, WavHeader.of(whole), 0);
      channel.truncate(WavHeader.BYTES + whole);
      channel.force(true);
      return whole > 0;
    }
  }

  @Override
  public void add(short[] samples) {
    ByteBuffer bytes = WavHeader.sound(samples);
    try {
      write(channel, bytes, WavHeader.BYTES + soundBytes);
      soundBytes += bytes.limit();
      write(channel, WavHeader.of(soundBytes), 0);
    } catch (IOException e) {
      throw failure(file.getParent(), e);
    }
  }

  @Override
  public String keep() {
    try {
      write(channel, WavHeader.of(soundBytes), 0);
      channel.force(true);
      channel.close();
      Path kept = finalName.get();
      Files.move(file, kept, StandardCopyOption.ATOMIC_MOVE);
      isKept = true;
      syncFolder();
      return kept.getFileName().toString();
    } catch (IOException e) {
      throw failure(file.getParent(), e);
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
      if (!isKept) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      // the next start puts in order what is left
      return;
    }
  }

  /** The sentence for what went wrong in a folder. */
  static MemoException failure(Path folder, IOException cause) {
    String sentence =
        isFull(folder)
            ? "The note is not recorded: the disk that holds "
                + folder
                + " is full; free some space, or type the note."
            : "The note is not recorded: "
                + folder
                + " cannot be written to; look after the folder, or type the note.";
    return new MemoException(sentence, cause);
  }

  private static boolean isFull(Path folder) {
    try {
      Path asked = Files.exists(folder) ? folder : folder.toAbsolutePath().getParent();
      return Files.getFileStore(asked).getUsableSpace() < NEXT_TO_NOTHING_BYTES;
    } catch (IOException e) {
      // a folder that cannot even be asked is not known to be full
      return false;
    }
  }

  /** Without this a power cut may take the new name back. */
  private void syncFolder() {
    try (FileChannel folder = FileChannel.open(file.getParent(), StandardOpenOption.READ)) {
      folder.force(true);
    } catch (IOException e) {
      // some systems cannot sync a folder; they keep a rename by themselves
      return;
    }
  }

  private static void write(FileChannel channel, ByteBuffer bytes, long at) throws IOException {
    long position = at;
    while (bytes.hasRemaining()) {
      position += channel.write(bytes, position);
    }
  }
}
