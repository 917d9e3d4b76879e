package org.calamus.adapter.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.speech.Vocabulary;
import org.calamus.core.speech.WordsFile;
import org.calamus.port.SettingsException;
import org.calamus.port.Vocabularies;

/**
 * The vocabulary files: those that the program carries, and the user's. A file of the user's takes
 * the place of the program's of the same name; any other adds to them.
 */
public final class WordsFolder implements Vocabularies {

  private static final String RESOURCES = "/grammars";
  private static final List<String> OWN =
      List.of(
          "commands.words",
          "fields.words",
          "numbers.words",
          "codes.words",
          "species.words",
          "letters.words",
          "decoys.words");

  private final Optional<Path> folder;

  /**
   * Over the user's folder.
   *
   * @param folder need not exist; empty for the program's own files alone
   */
  public WordsFolder(Optional<Path> folder) {
    this.folder = folder.filter(Files::isDirectory);
  }

  @Override
  public Vocabulary read() {
    List<WordsFile.Contents> files = new ArrayList<>();
    for (String name : OWN) {
      files.add(
          WordsFile.read(
              TextSource.shown(folder, "grammars", name),
              TextSource.lines(folder, RESOURCES, name)));
    }
    for (Path added : added()) {
      files.add(WordsFile.read(added.toString(), TextSource.lines(added)));
    }
    List<String> problems = new ArrayList<>();
    Vocabulary vocabulary = WordsFile.join(files, problems);
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
    return vocabulary;
  }

  private List<Path> added() {
    if (folder.isEmpty()) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder.get())) {
      return all.filter(p -> p.getFileName().toString().endsWith(".words"))
          .filter(p -> !OWN.contains(p.getFileName().toString()))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new SettingsException(
          folder.get() + ": the folder cannot be listed; check who may read it.");
    }
  }
}
