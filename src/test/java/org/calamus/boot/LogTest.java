package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogTest {

  @TempDir Path folder;

  @Test
  void addWritesEachSentenceOnALineOfItsOwnBehindWhatIsThere() throws IOException {
    Path log = folder.resolve("data").resolve("calamus.log");
    Log.add(List.of("Ünlike words.", "Another."), log);
    Log.add(List.of("A third."), log);
    assertThat(Files.readAllLines(log)).containsExactly("Ünlike words.", "Another.", "A third.");
  }

  @Test
  void addMakesNoFileForNothingAndMindsNoneThatCannotBeWritten() throws IOException {
    Path log = folder.resolve("calamus.log");
    Log.add(List.of(), log);
    assertThat(log).doesNotExist();
    Files.createDirectory(log);
    assertThatCode(() -> Log.add(List.of("A sentence."), log)).doesNotThrowAnyException();
  }
}
