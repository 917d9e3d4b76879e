package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Pattern;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Event;
import org.calamus.port.KeptUtterances.Kept;

/**
 * The folder of one session's utterances: {@code 0001.wav} and so on, and a list with a line for
 * each. A line is written after its sound; nothing is synced to the disk, since that would hold up
 * the journal of the records.
 */
final class SessionFolder {

  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final Pattern NAMES = Pattern.compile("\\d{8}T\\d{6}Z(-\\d+)?");
  private static final Pattern SOUNDS = Pattern.compile("\\d{4,9}\\.wav");

  private final Path folder;
  private int count;

  private SessionFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * Makes the folder of a session that begins.
   *
   * @param all the folder of all sessions; made where it is not there
   */
  static SessionFolder begin(Path all, Instant at) throws IOException {
    Files.createDirectories(all);
    Path folder = all.resolve(NAME.format(at));
    for (int i = 2; Files.exists(folder); i++) {
      folder = all.resolve(NAME.format(at) + "-" + i);
    }
    return new SessionFolder(Files.createDirectory(folder));
  }

  /** Whether a folder has the name of a session's. */
  static boolean isSession(Path folder) {
    return NAMES.matcher(folder.getFileName().toString()).matches();
  }

  /** Whether a file in such a folder is one that was written here. */
  static boolean isOurs(Path file) {
    String name = file.getFileName().toString();
    return isSound(name) || name.equals(UtteranceLists.NAME);
  }

  /** Whether a name is that of a sound. */
  static boolean isSound(String name) {
    return SOUNDS.matcher(name).matches();
  }

  /** Where it is. */
  Path path() {
    return folder;
  }

  /**
   * Adds an utterance.
   *
   * @return how many bytes it takes
   */
  long add(Event.Heard event, String grammar, short[] sound, Account account) throws IOException {
    count++;
    Path wav = folder.resolve(String.format(Locale.ROOT, "%04d.wav", count));
    Kept kept = new Kept(wav, sound.length, event, grammar, account);
    ByteBuffer samples = WavHeader.sound(sound);
    ByteBuffer line = StandardCharsets.UTF_8.encode(UtteranceLine.write(kept) + "\n");
    long bytes = WavHeader.BYTES + samples.limit() + (long) line.limit();
    write(wav, StandardOpenOption.CREATE_NEW, WavHeader.of(samples.limit()));
    write(wav, StandardOpenOption.APPEND, samples);
    Path list = folder.resolve(UtteranceLists.NAME);
    if (!Files.exists(list)) {
      Files.createFile(list);
    }
    write(list, StandardOpenOption.APPEND, line);
    return bytes;
  }

  private static void write(Path file, StandardOpenOption how, ByteBuffer bytes)
      throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, how)) {
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
    }
  }
}
