package org.calamus.benchmark;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Month;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * One real speaker: the words of a telephone system's prompts (Debian package
 * asterisk-core-sounds-en-g722) put in a row, and her whole prompts as speech that is not meant for
 * the console.
 */
final class RecordedPrompts implements Speaker.Mouth {

  private static final Path SOUNDS = Path.of("/usr/share/asterisk/sounds");
  private static final AudioFormat FORMAT = new AudioFormat(16000, 16, 1, true, false);
  private static final String LETTERS =
      "alpha bravo charlie delta echo foxtrot golf hotel india juliet kilo lima mike november"
          + " oscar papa quebec romeo sierra tango uniform victor whiskey x-ray yankee zulu";

  private final Map<String, Path> files = new HashMap<>();
  private final Map<Path, byte[]> decoded = new HashMap<>();

  RecordedPrompts(Path folder) throws IOException {
    for (int i = 0; i < 100; i += i < 20 ? 1 : 10) {
      files.put(SpokenNumbers.inWords(i), folder.resolve("digits/" + i + ".g722"));
    }
    for (int place = 1; place <= 30; place += place < 20 ? 1 : 10) {
      files.put(SpokenNumbers.inOrder(place), folder.resolve("digits/h-" + place + ".g722"));
    }
    for (Month month : Month.values()) {
      String name = month.name().toLowerCase(Locale.ROOT);
      files.put(name, folder.resolve("digits/mon-" + (month.getValue() - 1) + ".g722"));
    }
    files.put("oh", folder.resolve("digits/oh.g722"));
    files.put("hundred", folder.resolve("digits/hundred.g722"));
    files.put("status", folder.resolve("followme/status.g722"));
    files.put("time", folder.resolve("time.g722"));
    for (String letter : LETTERS.split(" ")) {
      files.put(letter, folder.resolve("phonetic/" + letter.charAt(0) + "_p.g722"));
    }
    for (Path prompt : all(folder)) {
      files.put(prompt.getFileName().toString(), prompt);
    }
  }

  /** The folder of the recordings; empty where they are not on this machine. */
  static List<Path> folders() throws IOException {
    if (!Files.isDirectory(SOUNDS)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(SOUNDS)) {
      return all.filter(p -> p.getFileName().toString().startsWith("en_"))
          .filter(p -> Files.exists(p.resolve("digits/0.g722")))
          .sorted()
          .toList();
    }
  }

  /** Whole prompts: speech that is not meant for the console. */
  static List<Path> prompts(Path folder) throws IOException {
    return all(folder).stream().filter(RecordedPrompts::isPrompt).limit(48).toList();
  }

  /** The other prompts that are as long as a sentence. */
  static List<Path> sentences(Path folder) throws IOException {
    return all(folder).stream()
        .filter(p -> !isPrompt(p) && OtherLanguages.isTalk(p.toString()))
        .toList();
  }

  private static boolean isPrompt(Path file) {
    return file.getFileName().toString().startsWith("vm-");
  }

  private static List<Path> all(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(p -> p.toString().endsWith(".g722")).sorted().toList();
    }
  }

  @Override
  public boolean canSay(Said said) {
    return said.isChatter()
        ? files.containsKey(said.spoken())
        : Stream.of(said.words().split(" ")).allMatch(files::containsKey);
  }

  @Override
  public void say(Said said, Path wav) throws IOException, InterruptedException {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (String word : said.isChatter() ? new String[] {said.spoken()} : said.words().split(" ")) {
      all.write(decode(files.get(word)));
    }
    AudioInputStream stream =
        new AudioInputStream(new ByteArrayInputStream(all.toByteArray()), FORMAT, all.size() / 2);
    AudioSystem.write(stream, AudioFileFormat.Type.WAVE, wav.toFile());
  }

  private byte[] decode(Path file) throws IOException, InterruptedException {
    byte[] known = decoded.get(file);
    if (known != null) {
      return known;
    }
    List<String> command = new ArrayList<>(List.of("ffmpeg", "-loglevel", "error", "-f", "g722"));
    command.addAll(List.of("-i", file.toString(), "-ar", "16000", "-ac", "1", "-f", "s16le", "-"));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    byte[] samples = process.getInputStream().readAllBytes();
    if (process.waitFor() != 0) {
      throw new IOException("ffmpeg could not decode " + file);
    }
    decoded.put(file, samples);
    return samples;
  }
}
