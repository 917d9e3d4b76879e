package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.calamus.acoustic.AcousticTables;
import org.calamus.acoustic.ModelBuilder;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;

/** A model of a few words, made once a test run from the shipped tables. */
final class TestModel {

  private static final List<String> DIGITS =
      List.of(("oh zero one two three four five six seven eight nine point").split(" "));
  private static final List<String> COMMANDS = List.of(("save record repeat cancel").split(" "));

  private static final Path FOLDER = build();

  private TestModel() {}

  /** The folder of the model. */
  static Path folder() {
    return FOLDER;
  }

  private static Path build() {
    List<WordToBuild> words = new ArrayList<>();
    DIGITS.forEach(word -> words.add(WordToBuild.chained(word, "number", "test")));
    COMMANDS.forEach(word -> words.add(WordToBuild.plain(word, "test")));
    AcousticTables tables =
        new AcousticTables(
            resource("en-us/mdef"),
            resource("en-us/means"),
            resource("en-us/variances"),
            resource("en-us/transition_matrices"),
            resource("en-us/sendump"),
            resource("en-us/feat.params"));
    String dictionary = new String(resource("cmudict-en-us.dict"), StandardCharsets.UTF_8);
    try {
      Path folder = Files.createTempDirectory("calamus-test-model");
      Map<String, byte[]> files =
          ModelBuilder.build(tables, dictionary, words, Settings.standard()).files();
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path path = folder.resolve(file.getKey());
        Files.createDirectories(path.getParent());
        Files.write(path, file.getValue());
        path.toFile().deleteOnExit();
      }
      return folder;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] resource(String name) {
    try (InputStream in = TestModel.class.getResourceAsStream("/acoustic/" + name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
