package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.UnusableWordsException;
import org.calamus.acoustic.WordProblem;
import org.calamus.acoustic.WordToBuild;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vosk.Model;

class ModelFolderTest {

  @TempDir private Path folder;

  private void touch(String file) throws IOException {
    Files.createDirectories(folder.resolve(file).getParent());
    Files.writeString(folder.resolve(file), "x");
  }

  @Test
  void folderThatIsNotThereIsNamed() {
    assertThatThrownBy(() -> ModelFolder.ofUser(folder.resolve("none")))
        .isInstanceOf(ModelException.class)
        .hasMessageContaining("There is no speech model folder " + folder.resolve("none"));
  }

  @Test
  void folderWithoutAModelIsRefused() {
    assertThatThrownBy(() -> ModelFolder.ofUser(folder))
        .isInstanceOf(ModelException.class)
        .hasMessageContaining("has no file am/final.mdl");
  }

  @Test
  void modelWithOneFixedGraphIsRefused() throws IOException {
    touch("am/final.mdl");
    touch("graph/HCLG.fst");
    assertThatThrownBy(() -> ModelFolder.ofUser(folder))
        .isInstanceOf(ModelException.class)
        .hasMessageContaining("cannot be limited to the words of a field")
        .hasMessageContaining("graph/HCLr.fst");
    touch("graph/HCLr.fst");
    assertThatThrownBy(() -> ModelFolder.ofUser(folder))
        .isInstanceOf(ModelException.class)
        .hasMessageContaining("no file graph/Gr.fst");
  }

  @Test
  void damagedModelDoesNotLoad() throws IOException {
    touch("am/final.mdl");
    touch("graph/HCLr.fst");
    touch("graph/Gr.fst");
    try (ModelFolder model = ModelFolder.ofUser(folder)) {
      assertThatThrownBy(() -> VoskLibrary.load(model.path()))
          .isInstanceOf(ModelException.class)
          .hasMessageContaining("The speech model in " + folder + " cannot be loaded");
    }
  }

  @Test
  void wordsTheModelDoesNotKnowAreNamedWithTheirPlace() {
    WordToBuild foreign =
        new WordToBuild("grünling", List.of("G R IY N L IH NG"), Optional.empty(), "a.words:1");
    try (ModelFolder built = new ModelCache(folder).open(List.of(foreign), Settings.standard());
        ModelFolder given = ModelFolder.ofUser(built.path());
        Model model = VoskLibrary.load(given.path())) {
      WordToBuild missing = WordToBuild.plain("wing", "b.words:12");
      assertThat(VoskLibrary.unknownWords(model, List.of(foreign, missing)))
          .containsExactly(
              new WordProblem("wing", "b.words:12", "is not known to the speech model"));
    }
  }

  @Test
  void requireWordsNamesEveryWordTheModelDoesNotKnow() {
    WordToBuild known = WordToBuild.plain("wing", "a.words:1");
    try (ModelFolder built = new ModelCache(folder).open(List.of(known), Settings.standard());
        ModelFolder given = ModelFolder.ofUser(built.path())) {
      given.requireWords(List.of(known));
      assertThatThrownBy(
              () ->
                  given.requireWords(
                      List.of(
                          WordToBuild.plain("robin", "b.words:2"),
                          WordToBuild.plain("junco", "b.words:3"))))
          .isInstanceOf(UnusableWordsException.class)
          .hasMessageContaining("b.words:2")
          .hasMessageContaining("b.words:3");
    }
  }

  @Test
  void frameMillisFollowsTheModelsOwnSettings() throws IOException {
    touch("am/final.mdl");
    touch("graph/HCLr.fst");
    touch("graph/Gr.fst");
    try (ModelFolder model = ModelFolder.ofUser(folder)) {
      // Kaldi's chain models give one output for three frames of 10 ms
      assertThat(model.frameMillis()).isEqualTo(30);
      Files.createDirectories(folder.resolve("conf"));
      Files.writeString(
          folder.resolve("conf/model.conf"), "--beam=13\n--frame-subsampling-factor=1\n");
      assertThat(model.frameMillis()).isEqualTo(10);
    }
  }
}
