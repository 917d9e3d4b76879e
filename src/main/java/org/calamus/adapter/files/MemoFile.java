package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.function.Supplier;
import org.calamus.port.AudioSource;
import org.calamus.port.Memos;
import org.calamus.port.Memos.MemoException;

/**
 * A memo that is being written. Its header is put right with every block, so that what is there can
 * be played whenever the process is killed.
 *
 * <p>Source of the layout: Microsoft and IBM, Multimedia Programming Interface and Data
 * Specifications 1.0 (1991), "Waveform Audio File Format": a RIFF chunk with a format chunk of 16
 * bytes and a data chunk, all numbers little-endian.
 */
final class MemoFile implements Memos.Recording {

  private static final int HEADER_BYTES = 44;
  private static final int FORMAT_BYTES = 16;
  private static final short PCM = 1;
  private static final short CHANNELS = 1;
  private static final short BYTES_A_SAMPLE = 2;

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
      long whole = Math.max(0, channel.size() - HEADER_BYTES) / BYTES_A_SAMPLE * BYTES_A_SAMPLE;
      write(channel, header(whole), 0);
      channel.truncate(HEADER_BYTES + whole);
      channel.force(true);
      return whole > 0;
    }
  }

  @Override
  public void add(short[] samples) {
    ByteBuffer bytes =
        ByteBuffer.allocate(samples.length * BYTES_A_SAMPLE).order(ByteOrder.LITTLE_ENDIAN);
    for (short sample : samples) {
      bytes.putShort(sample);
    }
    try {
      write(channel, bytes.flip(), HEADER_BYTES + soundBytes);
      soundBytes += bytes.limit();
      write(channel, header(soundBytes), 0);
    } catch (IOException e) {
      throw failure(file.getParent(), e);
    }
  }

  @Override
  public String keep() {
    try {
      write(channel, header(soundBytes), 0);
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

  private static ByteBuffer header(long soundBytes) {
    return ByteBuffer.allocate(HEADER_BYTES)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("RIFF"))
        .putInt((int) (HEADER_BYTES - 8 + soundBytes))
        .put(ascii("WAVEfmt "))
        .putInt(FORMAT_BYTES)
        .putShort(PCM)
        .putShort(CHANNELS)
        .putInt(AudioSource.RATE)
        .putInt(AudioSource.RATE * BYTES_A_SAMPLE)
        .putShort(BYTES_A_SAMPLE)
        .putShort((short) (8 * BYTES_A_SAMPLE))
        .put(ascii("data"))
        .putInt((int) soundBytes)
        .flip();
  }

  private static byte[] ascii(String name) {
    return name.getBytes(StandardCharsets.US_ASCII);
  }
}
