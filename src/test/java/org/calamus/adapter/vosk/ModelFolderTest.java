package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.acoustic.Settings;
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
}
