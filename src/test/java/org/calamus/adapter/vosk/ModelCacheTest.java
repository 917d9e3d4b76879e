package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.UnusableWordsException;
import org.calamus.acoustic.WordToBuild;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vosk.Model;

class ModelCacheTest {

  private static final FileTime LONG_AGO = FileTime.from(Instant.EPOCH);
  private static final List<WordToBuild> WORDS =
      List.of(WordToBuild.plain("wing", "a.words:1"), WordToBuild.plain("two", "a.words:2"));
  private static final List<WordToBuild> OTHER_WORDS =
      List.of(WordToBuild.plain("wing", "a.words:1"), WordToBuild.plain("three", "a.words:2"));

  @TempDir private Path folder;
  private Path cache;

  @BeforeEach
  void chooseFolderThatIsNotThereYet() {
    cache = folder.resolve("a/cache");
  }

  /** Opens and lets go; gives the folder. */
  private Path open(List<WordToBuild> words) {
    try (ModelFolder model = new ModelCache(cache).open(words, Settings.standard())) {
      return model.path();
    }
  }

  /** Marks a model, so that a later one can be told from it. */
  private static Path age(Path model) throws IOException {
    return Files.setLastModifiedTime(model.resolve("am/final.mdl"), LONG_AGO);
  }

  private static boolean isAged(Path model) throws IOException {
    return Files.getLastModifiedTime(model.resolve("am/final.mdl")).equals(LONG_AGO);
  }

  private List<String> names(String start) throws IOException {
    try (Stream<Path> files = Files.list(cache)) {
      return files.map(f -> f.getFileName().toString()).filter(n -> n.startsWith(start)).toList();
    }
  }

  @Test
  void modelIsBuiltOnceAndLoads() throws IOException {
    Path built = open(WORDS);
    age(built);
    Path found = open(WORDS);
    assertThat(found).isEqualTo(built);
    assertThat(isAged(found)).as("not built again").isTrue();
    try (Model model = VoskLibrary.load(found)) {
      assertThat(VoskLibrary.unknownWords(model, WORDS)).isEmpty();
    }
  }

  @Test
  void otherPlacesOfTheSameWordsNeedNoOtherModel() throws IOException {
    age(open(List.of(WordToBuild.plain("wing", "a.words:1"))));
    assertThat(isAged(open(List.of(WordToBuild.plain("wing", "b.words:9"))))).isTrue();
  }

  @Test
  void otherWordsPronunciationsChainsAndSettingsGiveOtherModels() {
    WordToBuild plain = WordToBuild.plain("wing", "a.words:1");
    WordToBuild chained = WordToBuild.chained("wing", "numbers", "a.words:1");
    WordToBuild said = new WordToBuild("wing", List.of("W IH N"), Optional.empty(), "a.words:1");
    List<Path> models = new ArrayList<>();
    for (WordToBuild word : List.of(plain, chained, said)) {
      models.add(open(List.of(word)));
    }
    try (ModelFolder quiet =
        new ModelCache(cache).open(List.of(plain), Settings.standard().withDither(1))) {
      models.add(quiet.path());
    }
    assertThat(models).doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @ValueSource(strings = {"am/final.mdl", "graph/HCLr.fst", "graph/words.txt", "conf/model.conf"})
  void damagedModelIsBuiltAgain(String file) throws IOException {
    Path model = open(WORDS);
    byte[] right = Files.readAllBytes(model.resolve(file));
    byte[] wrong = right.clone();
    wrong[wrong.length / 2] ^= 1;
    Files.write(model.resolve(file), wrong);
    assertThat(Files.readAllBytes(open(WORDS).resolve(file))).isEqualTo(right);
  }

  @Test
  void missingAddedOrUnlistedFilesHaveTheModelBuiltAgain() throws IOException {
    Path model = open(WORDS);
    Files.delete(model.resolve("graph/Gr.fst"));
    assertThat(open(WORDS).resolve("graph/Gr.fst")).exists();
    Files.createDirectory(model.resolve("ivector"));
    Files.writeString(model.resolve("ivector/final.ie"), "x");
    assertThat(open(WORDS).resolve("ivector/final.ie")).doesNotExist();
    age(model);
    Files.writeString(model.resolve(Manifest.NAME), "");
    assertThat(isAged(open(WORDS))).isFalse();
    age(model);
    Files.delete(model.resolve(Manifest.NAME));
    assertThat(isAged(open(WORDS))).isFalse();
    assertThat(names("unfinished-")).isEmpty();
  }

  @Test
  void modelsOfOtherWordsAreClearedUnlessInUse() throws IOException {
    try (ModelFolder used = new ModelCache(cache).open(WORDS, Settings.standard())) {
      Path other = open(OTHER_WORDS);
      assertThat(used.path()).exists();
      assertThat(names("model-")).hasSize(2);
      open(WORDS);
      assertThat(other).doesNotExist();
    }
    Path other = open(OTHER_WORDS);
    assertThat(names("model-")).containsExactly(other.getFileName().toString());
    assertThat(names("in-use-")).isEmpty();
  }

  @Test
  void whatACrashLeftBehindIsClearedAway() throws IOException {
    Path model = open(WORDS);
    Files.createDirectories(cache.resolve("unfinished-1/am"));
    Files.writeString(cache.resolve("unfinished-1/am/final.mdl"), "half");
    Files.writeString(cache.resolve("in-use-" + model.getFileName() + "7.lock"), "");
    open(OTHER_WORDS);
    assertThat(names("unfinished-")).isEmpty();
    assertThat(model).doesNotExist();
  }

  @Test
  void threadsThatStartAtOnceShareOneModel() throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      List<Future<Path>> opened = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        opened.add(threads.submit(() -> open(WORDS)));
      }
      Path first = opened.get(0).get();
      for (Future<Path> one : opened) {
        assertThat(one.get()).isEqualTo(first);
      }
    } finally {
      threads.shutdownNow();
    }
    assertWholeAndAlone();
  }

  @Test
  void processesThatStartAtOnceShareOneModel() throws Exception {
    List<Process> processes = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      processes.add(
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Xmx256m",
                  "-cp",
                  System.getProperty("java.class.path"),
                  OneStart.class.getName(),
                  cache.toString())
              .redirectErrorStream(true)
              .start());
    }
    List<String> outputs = new ArrayList<>();
    for (Process process : processes) {
      outputs.add(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
      assertThat(process.waitFor()).as("%s", outputs).isZero();
    }
    assertThat(outputs.get(0)).isEqualTo(outputs.get(1)).contains("model-");
    assertThat(open(WORDS)).hasToString(outputs.get(0).strip());
    assertWholeAndAlone();
  }

  /** A start of the program in a process of its own. */
  static final class OneStart {

    private OneStart() {}

    public static void main(String[] args) {
      try (ModelFolder model = new ModelCache(Path.of(args[0])).open(WORDS, Settings.standard())) {
        System.out.println(model.path());
      }
    }
  }

  private void assertWholeAndAlone() throws IOException {
    assertThat(names("model-")).hasSize(1);
    assertThat(names("unfinished-")).isEmpty();
    Path model = cache.resolve(names("model-").get(0));
    age(model);
    assertThat(isAged(open(WORDS))).as("found whole").isTrue();
  }

  @Test
  void folderThatCannotBeMadeIsNamed() throws IOException {
    Files.createDirectories(cache.getParent());
    Files.writeString(cache, "a file where the folder should be");
    assertThatThrownBy(() -> open(WORDS))
        .isInstanceOf(ModelException.class)
        .hasMessageContaining("The speech model cannot be kept in the folder " + cache)
        .hasMessageContaining("make it writable with 20 MB free, or choose another folder");
  }

  @Test
  void wordsWithoutPronunciationLeaveNothingBehind() throws IOException {
    List<WordToBuild> words = List.of(WordToBuild.plain("xyzzyx", "places.words:7"));
    assertThatThrownBy(() -> open(words))
        .isInstanceOf(UnusableWordsException.class)
        .hasMessageContaining("places.words:7");
    assertThat(names("model-")).isEmpty();
    assertThat(names("unfinished-")).isEmpty();
  }

  @Test
  void missingAndDamagedTablesSayWhatToDo() {
    ShippedTables missing = new ShippedTables(name -> null);
    assertThatThrownBy(() -> new ModelCache(cache, missing).open(WORDS, Settings.standard()))
        .isInstanceOf(ModelException.class)
        .hasMessage(
            "The program's acoustic table /acoustic/en-us/mdef is missing: install Calamus again,"
                + " or give a speech model folder of your own with --model.");
    ShippedTables damaged =
        new ShippedTables(name -> new ByteArrayInputStream(new byte[] {1, 2, 3}));
    assertThatThrownBy(() -> new ModelCache(cache, damaged).open(WORDS, Settings.standard()))
        .isInstanceOf(ModelException.class)
        .hasMessageContaining("/acoustic/en-us/mdef is damaged: install Calamus again");
  }

  @Test
  void shippedTablesAreTheOnesTheirChecksumsSay() {
    ShippedTables shipped = ShippedTables.ofProgram();
    assertThat(shipped.tables().mdef()).isNotEmpty();
    assertThat(shipped.dictionary()).contains("\nwing W IH NG\n");
  }
}
