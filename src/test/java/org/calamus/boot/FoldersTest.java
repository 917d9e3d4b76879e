package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class FoldersTest {

  private final String home = System.getProperty("user.home");

  @AfterEach
  void giveTheHomeBack() {
    System.setProperty("user.home", home);
  }

  @Test
  void dataIsInTheHomeFolderWhereNoneIsGiven() {
    assertThat(new Folders(Optional.empty(), Optional.empty()).data())
        .isEqualTo(Path.of(home, ".calamus"));
  }

  @Test
  void dataIsRefusedWithoutAHomeFolder() {
    System.setProperty("user.home", "?");
    assertThatThrownBy(() -> new Folders(Optional.empty(), Optional.empty()).data())
        .isInstanceOf(Halt.class)
        .hasMessageContaining("--data");
    Path given = Path.of("records");
    assertThat(new Folders(Optional.of(given), Optional.empty()).data()).isEqualTo(given);
  }
}
