package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.core.speech.SpokenForm;
import org.calamus.port.SettingsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WordsFolderTest {

  @TempDir Path folder;

  private List<String> forms() {
    return new WordsFolder(Optional.of(folder))
        .read().forms().stream().map(SpokenForm::text).toList();
  }

  private Path write(String name, String text) throws IOException {
    return Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void readAddsAFileOfTheUsersToTheProgramsOwn() throws IOException {
    write("zz.words", "section commands\nroger = command affirm\n");
    assertThat(forms()).contains("roger", "affirm", "ninety");
  }

  @Test
  void readTakesTheUsersFileInPlaceOfTheProgramsOfTheSameName() throws IOException {
    write("decoys.words", "section decoys\nroger = nothing\n");
    assertThat(forms()).contains("roger", "affirm").doesNotContain("okay");
  }

  @Test
  void readMindsNoByteOrderMarkNoCarriageReturnsAndNoTabs() throws IOException {
    write("zz.words", "\uFEFFsection\tcommands\r\n\t roger\t=\tcommand\taffirm\t\r\n# end");
    assertThat(forms()).contains("roger");
  }

  @Test
  void readNamesEveryMistakeOfEveryFileWithItsLine() throws IOException {
    Path first =
        write("aa.words", "roger = command afirm\nroger / R AA JH ERR\nover = command end\n");
    Path second = write("bb.words", "\nover = command save\n");
    assertThatThrownBy(this::forms)
        .isInstanceOfSatisfying(
            SettingsException.class,
            e ->
                assertThat(e.problems())
                    .containsExactly(
                        first + ":1: \"command afirm\" is no meaning that Calamus knows.",
                        first + ":2: \"ERR\" is no phone of the model.",
                        second
                            + ":2: \"over\" already has another meaning at "
                            + first
                            + ":3; change one of the two."));
  }

  @Test
  void readSaysWhenAFileIsNoText() throws IOException {
    Path file = Files.write(folder.resolve("zz.words"), new byte[] {(byte) 0xC3, 0x28});
    assertThatThrownBy(this::forms)
        .isInstanceOf(SettingsException.class)
        .hasMessageStartingWith(file + ": cannot be read as UTF-8 text");
  }

  @Test
  void readNeedsNoFolder() {
    assertThat(new WordsFolder(Optional.of(folder.resolve("none"))).read().forms())
        .isEqualTo(new WordsFolder(Optional.empty()).read().forms());
  }
}
