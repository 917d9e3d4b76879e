package org.calamus.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.calamus.acoustic.Phrases;
import org.calamus.acoustic.WordToBuild;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.VocabularyWord;
import org.calamus.core.speech.Word;
import org.calamus.support.Fenwick;

/**
 * Another recogniser over the same acoustic model: PocketSphinx (Debian packages pocketsphinx and
 * pocketsphinx-en-us), given the same sound, words, pronunciations and grammars.
 */
final class Peer {

  private static final Path FOLDER = Path.of("/usr/share/pocketsphinx/model/en-us");
  private static final String PROGRAM = "pocketsphinx_batch";
  private static final String GARBAGE = "garbage";

  /** A line of its results: sound, channel, start, length, word and how sure it is of the word. */
  private static final Pattern HEARD =
      Pattern.compile("(\\S+) \\S+ (\\d+\\.\\d+) (\\d+\\.\\d+) (\\S+) (\\d+\\.\\d+)");

  private static final Pattern ANOTHER = Pattern.compile("\\(\\d+\\)$");
  private static final String PHONES =
      "AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V"
          + " W Y Z ZH";

  private final Path work;
  private final Map<String, List<String>> pronunciations;
  private final Phrases phrases;

  /**
   * The peer.
   *
   * @param work where its files go
   */
  Peer(Path work) throws IOException {
    this.work = Files.createDirectories(work);
    this.pronunciations = pronunciations();
    this.phrases =
        Phrases.among(
            Fenwick.vocabulary().phrases().stream().map(p -> WordToBuild.joined(p.words())));
  }

  /**
   * A sound that it shall hear.
   *
   * @param name without blanks; the sound lies in the work folder as {@code name.raw}
   * @param grammar what is listened for
   */
  record Sound(String name, Grammar grammar) {}

  /**
   * What it heard.
   *
   * @param words by the sounds' names; none of a sound in which it heard no word
   * @param seconds of its processes, added up
   * @param megabytes the most that one of them took
   */
  record Result(Map<String, List<Word>> words, double seconds, double megabytes) {}

  /** Whether it is on this machine. */
  static boolean isThere() {
    return Speakers.hasProgram(PROGRAM) && Files.isDirectory(FOLDER.resolve("en-us"));
  }

  /** Keeps a sound under a name. */
  void keep(String name, short[] sound) {
    byte[] bytes = new byte[2 * sound.length];
    for (int i = 0; i < sound.length; i++) {
      bytes[2 * i] = (byte) sound[i];
      bytes[2 * i + 1] = (byte) (sound[i] >> 8);
    }
    try {
      Files.write(work.resolve(name + ".raw"), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Removes all sounds. */
  void forget() throws IOException {
    try (Stream<Path> files = Files.list(work)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".raw")).toList()) {
        Files.delete(file);
      }
    }
  }

  /**
   * Hears all sounds, those of a grammar in one process, two processes at a time.
   *
   * @param doubt see {@link PeerLimits}
   */
  Result hear(List<Sound> sounds, PeerSettings settings, double doubt)
      throws IOException, InterruptedException {
    Map<Grammar, List<String>> byGrammar = new HashMap<>();
    sounds.forEach(
        s -> byGrammar.computeIfAbsent(s.grammar(), g -> new ArrayList<>()).add(s.name()));
    Map<String, List<Word>> words = new TreeMap<>();
    double seconds = 0;
    double megabytes = 0;
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      List<Future<Result>> results = new ArrayList<>();
      int number = 0;
      for (Map.Entry<Grammar, List<String>> entry : byGrammar.entrySet()) {
        String name = "grammar-" + number++;
        results.add(
            two.submit(() -> hear(name, entry.getKey(), entry.getValue(), settings, doubt)));
      }
      for (Future<Result> result : results) {
        words.putAll(result.get().words());
        seconds += result.get().seconds();
        megabytes = Math.max(megabytes, result.get().megabytes());
      }
    } catch (ExecutionException e) {
      throw new IOException("the peer failed", e);
    } finally {
      two.shutdown();
    }
    return new Result(words, seconds, megabytes);
  }

  private Result hear(
      String name, Grammar grammar, List<String> sounds, PeerSettings settings, double doubt)
      throws IOException, InterruptedException {
    List<String> lines = phrases(grammar, settings);
    Set<String> known = new TreeSet<>();
    lines.forEach(p -> known.addAll(List.of(p.split(" "))));
    write(name + ".lm", new Arpa(lines).text());
    write(name + ".dict", dictionary(known, settings));
    write(name + ".ctl", String.join("\n", sounds) + "\n");
    List<String> command = new ArrayList<>(List.of(PROGRAM, "-adcin", "yes", "-cepext", ".raw"));
    command.addAll(List.of("-cepdir", work.toString(), "-ctl", path(name + ".ctl")));
    command.addAll(List.of("-hmm", FOLDER.resolve("en-us").toString()));
    command.addAll(List.of("-lm", path(name + ".lm"), "-dict", path(name + ".dict")));
    command.addAll(List.of("-ctm", path(name + ".ctm"), "-logfn", path(name + ".log")));
    command.addAll(List.of("-ascale", String.valueOf(doubt)));
    command.addAll(settings.options());
    long began = System.nanoTime();
    double megabytes = run(command);
    double seconds = (System.nanoTime() - began) / 1e9;
    List<String> heard = Files.readAllLines(Path.of(path(name + ".ctm")));
    return new Result(read(heard), seconds, megabytes);
  }

  /** Runs a program to its end; gives the most memory that it was seen to take. */
  private static double run(List<String> command) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    Path status = Path.of("/proc", String.valueOf(process.pid()), "status");
    double most = 0;
    while (!process.waitFor(50, TimeUnit.MILLISECONDS)) {
      most = Math.max(most, megabytes(status));
    }
    if (process.exitValue() != 0) {
      throw new IOException(String.join(" ", command) + " failed");
    }
    return most;
  }

  /** 0 where the process has just ended, or outside Linux. */
  private static double megabytes(Path status) {
    try {
      double now = Benchmarks.megabytes(Files.readString(status), "VmHWM");
      return Double.isNaN(now) ? 0 : now;
    } catch (IOException e) {
      return 0;
    }
  }

  private String path(String file) {
    return work.resolve(file).toString();
  }

  private void write(String file, String text) throws IOException {
    Files.writeString(work.resolve(file), text, StandardCharsets.UTF_8);
  }

  /** Our phrases with its word for all else in the place of ours. */
  private List<String> phrases(Grammar grammar, PeerSettings settings) {
    List<String> all = new ArrayList<>();
    for (String phrase : grammar.phrases()) {
      if (!phrase.equals(Word.UNKNOWN)) {
        boolean isApart = settings.phrases() == PeerSettings.Phrasing.APART;
        all.add(isApart ? phrase : phrases.joined(phrase));
      } else if (settings.garbage() != PeerSettings.Garbage.NONE) {
        all.add(String.join(" ", Collections.nCopies(settings.garbageRun(), GARBAGE)));
      }
    }
    return all;
  }

  private String dictionary(Set<String> words, PeerSettings settings) throws IOException {
    StringBuilder text = new StringBuilder();
    for (String word : words) {
      List<String> said =
          word.equals(GARBAGE)
              ? settings.garbage() == PeerSettings.Garbage.PHONES
                  ? List.of(PHONES.split(" "))
                  : List.of("+SPN+")
              : said(word, settings);
      if (said.isEmpty()) {
        throw new IOException("no pronunciation of " + word);
      }
      for (int i = 0; i < said.size(); i++) {
        text.append(word).append(i == 0 ? "" : "(" + (i + 1) + ")");
        text.append(' ').append(said.get(i)).append('\n');
      }
    }
    return text.toString();
  }

  /** Of a phrase every way to say the first word with every way to say the next. */
  private List<String> said(String name, PeerSettings settings) {
    List<String> ways = List.of("");
    for (String word : phrases.parted(name)) {
      List<String> longer = new ArrayList<>();
      for (String before : ways) {
        for (String way : pronunciations.getOrDefault(word, List.of())) {
          longer.add((before + " " + way).strip());
          if (settings.phrases() == PeerSettings.Phrasing.WHOLE_WITH_PAUSES && !before.isEmpty()) {
            longer.add(before + " SIL " + way);
          }
        }
      }
      ways = longer;
    }
    return ways;
  }

  /**
   * What it heard, by the sounds' names; its word for all else is ours again, and of a phrase each
   * word is as sure as the whole.
   *
   * @param lines in the format of time-marked conversations (NIST, "ctm")
   */
  static Map<String, List<Word>> read(List<String> lines) {
    Map<String, List<Word>> words = new TreeMap<>();
    for (String line : lines) {
      Matcher matcher = HEARD.matcher(line);
      if (matcher.matches()) {
        List<Word> heard = words.computeIfAbsent(matcher.group(1), n -> new ArrayList<>());
        String plain = ANOTHER.matcher(matcher.group(4)).replaceAll("");
        double confidence = Math.min(1, Double.parseDouble(matcher.group(5)));
        long start = Math.round(1000 * Double.parseDouble(matcher.group(2)));
        long end = start + Math.round(1000 * Double.parseDouble(matcher.group(3)));
        if (!plain.equals(GARBAGE)) {
          WordToBuild.parted(plain)
              .forEach(part -> heard.add(new Word(part, confidence, start, end)));
        } else if (heard.isEmpty() || !heard.get(heard.size() - 1).text().equals(Word.UNKNOWN)) {
          heard.add(new Word(Word.UNKNOWN, confidence, start, end));
        }
      }
    }
    return words;
  }

  /** Those that the vocabularies give, and those of its own dictionary for all other words. */
  private static Map<String, List<String>> pronunciations() throws IOException {
    Map<String, List<String>> all = new HashMap<>();
    Set<String> missing = new TreeSet<>();
    for (VocabularyWord word : Fenwick.vocabulary().wordsToPronounce()) {
      if (word.pronunciations().isEmpty()) {
        missing.add(word.word());
      } else {
        all.put(word.word(), word.pronunciations());
      }
    }
    for (String line : Files.readAllLines(FOLDER.resolve("cmudict-en-us.dict"))) {
      int blank = line.indexOf(' ');
      String word = ANOTHER.matcher(line.substring(0, Math.max(0, blank))).replaceAll("");
      if (missing.contains(word.toLowerCase(Locale.ROOT))) {
        all.computeIfAbsent(word, w -> new ArrayList<>()).add(line.substring(blank + 1).strip());
      }
    }
    return all;
  }
}
