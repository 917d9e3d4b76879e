package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.calamus.acoustic.SampleTables;
import org.calamus.acoustic.Settings;
import org.calamus.support.Outside;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vosk.Model;

/**
 * How well one real speaker is recognised: the professional recordings of a telephone system's
 * prompts, in quiet.
 *
 * <p>It says nothing about other voices, nor about wind. Strings are joined from recordings of
 * single words, so the words keep their full length. The floors lie a little under what was
 * measured, to notice a model that has become worse.
 */
class RecordedSpeakerTest {

  private static final Path SOUNDS = Path.of("/usr/share/asterisk/sounds");
  private static final List<String> DIGITS =
      List.of("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");
  private static final List<String> TENS =
      List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

  /** Repeating a phrase raises its share in the recogniser's statistics of the grammar. */
  private static final int REPEATS = 8;

  /** Commands that sound like a number: not in a grammar that takes one. */
  private static final List<String> LIKE_NUMBERS = List.of("tail", "sex", "age", "that", "body");

  /** Silence before and after, as a microphone that is always open gives it. */
  private static final byte[] PAUSE = new byte[2 * 16000 / 5];

  @TempDir private static Path cache;

  private static Map<String, byte[]> recordings;
  private static ModelFolder folder;
  private static Model model;

  @BeforeAll
  static void prepare() throws Exception {
    recordings = decode();
    folder = new ModelCache(cache).open(SampleTables.words(), Settings.standard());
    model = VoskLibrary.load(folder.path());
  }

  @AfterAll
  static void close() {
    if (model != null) {
      model.close();
      folder.close();
    }
  }

  private static Map<String, byte[]> decode() throws Exception {
    Path ffmpeg = Outside.program("ffmpeg");
    Path speaker = speaker();
    Map<String, byte[]> decoded = new HashMap<>();
    for (int digit = 0; digit < 10; digit++) {
      decoded.put(DIGITS.get(digit), decode(ffmpeg, speaker.resolve("digits/" + digit + ".g722")));
    }
    decoded.put("oh", decode(ffmpeg, speaker.resolve("digits/oh.g722")));
    for (int ten = 2; ten < 10; ten++) {
      Path file = speaker.resolve("digits/" + ten + "0.g722");
      decoded.put(TENS.get(ten - 2), decode(ffmpeg, file));
    }
    for (String word : SampleTables.SPELLING.split(" ")) {
      Path file = speaker.resolve("phonetic/" + word.charAt(0) + "_p.g722");
      decoded.put(word, decode(ffmpeg, file));
    }
    return decoded;
  }

  /** The folder of the English prompts, whatever its speaker is called. */
  private static Path speaker() throws IOException {
    Outside.file(SOUNDS.toString());
    try (DirectoryStream<Path> folders = Files.newDirectoryStream(SOUNDS, "en_US*")) {
      for (Path folder : folders) {
        if (Files.exists(folder.resolve("digits/0.g722"))) {
          return folder;
        }
      }
    }
    return Outside.file(SOUNDS.resolve("en_US/digits/0.g722").toString());
  }

  private static byte[] decode(Path ffmpeg, Path file) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(ffmpeg.toString(), "-loglevel", "error"));
    command.addAll(List.of("-f", "g722", "-i", file.toString()));
    command.addAll(List.of("-ar", "16000", "-ac", "1", "-f", "s16le", "-"));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    byte[] samples = process.getInputStream().readAllBytes();
    assertThat(process.waitFor()).as("%s", command).isZero();
    return samples;
  }

  @Test
  void singleDigits() throws IOException {
    List<List<String>> said = new ArrayList<>();
    DIGITS.forEach(digit -> said.add(List.of(digit)));
    said.add(List.of("oh"));
    assertThat(measure("single digits", numberGrammar(), said).utterances()).isGreaterThan(0.85);
  }

  @Test
  void bandNumbers() throws IOException {
    Random random = new Random(9);
    List<List<String>> said = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      List<String> digits = new ArrayList<>();
      for (int k = 0; k < 9; k++) {
        digits.add(DIGITS.get(random.nextInt(10)));
      }
      said.add(digits);
    }
    assertThat(measure("nine digits", numberGrammar(), said).utterances()).isGreaterThan(0.9);
  }

  @Test
  void twoDigitNumbers() throws IOException {
    List<List<String>> said = new ArrayList<>();
    for (String ten : TENS) {
      for (String digit : DIGITS.subList(1, 10)) {
        said.add(List.of(ten, digit));
      }
    }
    assertThat(measure("tens and unit", numberGrammar(), said).utterances()).isGreaterThan(0.8);
  }

  @Test
  void spellingWords() throws IOException {
    List<List<String>> said = new ArrayList<>();
    for (String word : SampleTables.SPELLING.split(" ")) {
      said.add(List.of(word));
    }
    assertThat(measure("single spelling words", spellingGrammar(), said).utterances())
        .isGreaterThan(0.9);
  }

  @Test
  void spelledCodes() throws IOException {
    Random random = new Random(4);
    String[] alphabet = SampleTables.SPELLING.split(" ");
    List<List<String>> said = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      List<String> code = new ArrayList<>();
      for (int k = 0; k < 4; k++) {
        code.add(alphabet[random.nextInt(alphabet.length)]);
      }
      said.add(code);
    }
    assertThat(measure("four spelling words", spellingGrammar(), said).utterances())
        .isGreaterThan(0.9);
  }

  private static String numberGrammar() {
    List<String> phrases = new ArrayList<>();
    for (String word : (SampleTables.NUMBERS + " [unk]").split(" ")) {
      phrases.addAll(Collections.nCopies(REPEATS, word));
    }
    for (String ten : TENS) {
      for (String digit : DIGITS.subList(1, 10)) {
        phrases.add(ten + " " + digit);
      }
    }
    for (String command : SampleTables.COMMANDS.split(" ")) {
      if (!LIKE_NUMBERS.contains(command)) {
        phrases.add(command);
      }
    }
    return TestAudio.grammar(phrases);
  }

  private static String spellingGrammar() {
    List<String> phrases = new ArrayList<>();
    for (String word : (SampleTables.SPELLING + " [unk]").split(" ")) {
      phrases.addAll(Collections.nCopies(REPEATS, word));
    }
    phrases.addAll(List.of(SampleTables.COMMANDS.split(" ")));
    return TestAudio.grammar(phrases);
  }

  /** Shares of words and of whole utterances that were right. */
  private record Accuracy(double words, double utterances) {}

  private static Accuracy measure(String set, String grammar, List<List<String>> said)
      throws IOException {
    int words = 0;
    int wrongWords = 0;
    int right = 0;
    for (List<String> utterance : said) {
      String heard = TestAudio.hear(model, grammar, joined(utterance));
      int errors = errors(utterance, List.of(heard.split(" ")));
      words += utterance.size();
      wrongWords += errors;
      right += errors == 0 ? 1 : 0;
      if (errors > 0) {
        System.out.println("  said " + String.join(" ", utterance) + ", heard " + heard);
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%s, one speaker: %d of %d words wrong, %d of %d utterances right%n",
        set,
        wrongWords,
        words,
        right,
        said.size());
    return new Accuracy(1 - (double) wrongWords / words, (double) right / said.size());
  }

  private static byte[] joined(List<String> words) {
    ByteArrayOutputStream audio = new ByteArrayOutputStream();
    audio.writeBytes(PAUSE);
    words.forEach(word -> audio.writeBytes(recordings.get(word)));
    audio.writeBytes(PAUSE);
    return withHiss(audio.toByteArray());
  }

  /** The recordings begin and end in digital silence, which the ears never feed as it is. */
  private static byte[] withHiss(byte[] audio) {
    short[] samples = new short[audio.length / 2];
    ByteBuffer.wrap(audio).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(samples);
    byte[] out = new byte[audio.length];
    ByteBuffer.wrap(out)
        .order(ByteOrder.LITTLE_ENDIAN)
        .asShortBuffer()
        .put(new Hiss().over(samples));
    return out;
  }

  /** Least number of words to insert, leave out or replace. */
  private static int errors(List<String> said, List<String> heard) {
    int[][] cost = new int[said.size() + 1][heard.size() + 1];
    for (int i = 0; i <= said.size(); i++) {
      for (int k = 0; k <= heard.size(); k++) {
        if (i == 0 || k == 0) {
          cost[i][k] = i + k;
        } else {
          int same = said.get(i - 1).equals(heard.get(k - 1)) ? 0 : 1;
          int replaced = cost[i - 1][k - 1] + same;
          cost[i][k] = Math.min(replaced, 1 + Math.min(cost[i - 1][k], cost[i][k - 1]));
        }
      }
    }
    return cost[said.size()][heard.size()];
  }
}
