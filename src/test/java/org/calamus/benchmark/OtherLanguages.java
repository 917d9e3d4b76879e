package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Recordings of real people who speak other languages, from Debian packages: prompts of a telephone
 * (asterisk-core-sounds-es, -fr, -it, -ru, each with -g722; asterisk-prompt-es-co, -fr-armelle,
 * -it-menardi-wav), and letters and syllables (klettres-data). None of it is for the console. The
 * prompts' digits, letters and spelling words are left out: "zero" is said in several languages.
 */
final class OtherLanguages implements Speaker.Mouth {

  /**
   * How the folders of prompts begin; the first of them is by the speaker who took part already.
   */
  private static final Map<Half, List<String>> PROMPTS =
      Map.of(
          Half.TUNING, List.of("es_MX", "fr", "it_IT_m"),
          Half.REPORTING, List.of("es", "fr_CA", "it_IT_f", "ru_RU"));

  private static final Map<Half, List<String>> LETTERS =
      Map.of(
          Half.TUNING, List.of("ar", "da", "es", "he", "it", "ml", "nds", "pt_BR", "tn"),
          Half.REPORTING, List.of("cs", "de", "fr", "hu", "lt", "nb", "nl", "ru", "uk"));

  private static final Path SOUNDS = Path.of("/usr/share/asterisk/sounds");
  private static final Path KLETTRES = Path.of("/usr/share/klettres");

  /** Of one language, so that one with many recordings does not count for most. */
  private static final int MOST_LETTERS = 50;

  /** A prompt of two seconds is a sentence or part of one; a shorter one is a word or two. */
  private static final double LEAST_TALK_SECONDS = 2;

  private static final int LEAST_BYTES = 200;

  /** A file of asterisk-prompt-es-co that ffmpeg cannot read. */
  private static final String UNREADABLE = "/es/vm-first.gsm";

  /** Bytes a second by the ending of a file. */
  private static final Map<String, Double> RATES =
      Map.of("g722", 8_000.0, "gsm", 1_650.0, "wav", 16_000.0);

  private final String folder;

  private OtherLanguages(Path folder) {
    this.folder = folder + "/";
  }

  /** Everybody of a half who is on this machine. */
  static List<Speaker> speakers(Half half) throws IOException {
    List<Speaker> all = new ArrayList<>();
    for (Path folder : prompts(half)) {
      String language = folder.getFileName().toString().replaceAll("_[A-Z][a-z]\\w+$", "");
      all.add(speaker("prompts-" + language, half, folder));
    }
    for (Path folder : letters(half)) {
      all.add(speaker("letters-" + folder.getFileName(), half, folder));
    }
    return all;
  }

  private static Speaker speaker(String name, Half half, Path folder) {
    return new Speaker(name, half, "other languages", new OtherLanguages(folder));
  }

  /** Whole sentences of a half. */
  static List<String> talk(Half half) throws IOException {
    return promptFiles(half).stream().filter(OtherLanguages::isTalk).toList();
  }

  /** Single words and short phrases of a half. */
  static List<String> calls(Half half) throws IOException {
    return promptFiles(half).stream().filter(f -> !isTalk(f)).toList();
  }

  /** Letters and syllables of a half. */
  static List<String> spelling(Half half) throws IOException {
    List<String> all = new ArrayList<>();
    for (Path folder : letters(half)) {
      List<String> files = new ArrayList<>();
      for (String part : List.of("alpha", "syllab")) {
        files.addAll(Recordings.in(folder.resolve(part)));
      }
      all.addAll(files.subList(0, Math.min(MOST_LETTERS, files.size())));
    }
    return all;
  }

  /** Whether a file is as long as a sentence. */
  static boolean isTalk(String file) {
    String ending = file.substring(file.lastIndexOf('.') + 1);
    return Path.of(file).toFile().length() / RATES.get(ending) >= LEAST_TALK_SECONDS;
  }

  /** There are beeps among the prompts, and files with no sound in them. */
  private static boolean isSpeech(String file) {
    return !file.matches(".*/beep\\w*\\..*")
        && !file.endsWith(UNREADABLE)
        && Path.of(file).toFile().length() > LEAST_BYTES;
  }

  private static List<String> promptFiles(Half half) throws IOException {
    List<String> all = new ArrayList<>();
    for (Path folder : prompts(half)) {
      Recordings.in(folder).stream().filter(OtherLanguages::isSpeech).forEach(all::add);
    }
    return all;
  }

  private static List<Path> prompts(Half half) throws IOException {
    List<Path> all = new ArrayList<>();
    for (Path folder : folders(SOUNDS)) {
      String name = folder.getFileName().toString();
      boolean isMine =
          PROMPTS.get(half).stream()
              .anyMatch(p -> name.equals(p) || p.contains("_") && name.startsWith(p + "_"));
      if (isMine && !Files.isSymbolicLink(folder)) {
        all.add(folder);
      }
    }
    return all;
  }

  private static List<Path> letters(Half half) throws IOException {
    return folders(KLETTRES).stream()
        .filter(f -> LETTERS.get(half).contains(f.getFileName().toString()))
        .toList();
  }

  private static List<Path> folders(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(Files::isDirectory).sorted().toList();
    }
  }

  @Override
  public boolean canSay(Said said) {
    return said.isChatter() && said.spoken().startsWith(folder);
  }

  @Override
  public void say(Said said, Path wav) throws IOException, InterruptedException {
    Recordings.convert(Path.of(said.spoken()), wav);
  }
}
