package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.calamus.support.JarProcess;
import org.calamus.support.ShortForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The plug is pulled in mid-record, and the next start offers the unfinished bird. */
class KilledSessionIT {

  @TempDir Path data;

  private JarProcess console() throws IOException {
    ShortForm.into(data);
    return JarProcess.start("capture", "--plain", "--keypad", "--quiet", "--data", data.toString());
  }

  @Test
  void losesNothingThatWasTakenWhenKilled() throws Exception {
    try (JarProcess first = console()) {
      first.await("asked: Band number");
      first.type("284155601\n7270\n1\n4\n92\n");
      first.await("taken: Wing chord 92 mm");
      first.kill();
    }
    try (JarProcess second = console()) {
      second.await("An unfinished bird was found");
      second.type("\n");
      second.await("asked: Mass");
      second.type("22.3\n++");
      assertThat(second.await("saved 1"))
          .contains("band 2841-55601  species WBNU  age AHY  sex M  wing 92 mm  mass 22.3 g");
    }
  }

  @Test
  void keepsTheUnfinishedBirdWhenAskedToEnd() throws Exception {
    try (JarProcess first = console()) {
      first.await("asked: Band number");
      first.type("284155601\n");
      first.await("taken: Band number");
      first.terminate();
      first.exitCode();
    }
    try (JarProcess second = console()) {
      second.await("An unfinished bird was found");
    }
  }

  @Test
  void setsTheUnfinishedBirdAsideWhenNegated() throws Exception {
    try (JarProcess first = console()) {
      first.await("asked: Band number");
      first.type("284155601\n");
      first.await("taken: Band number");
      first.kill();
    }
    try (JarProcess second = console()) {
      second.await("An unfinished bird was found");
      second.type("-");
      second.await("asked: Band number");
      second.closeInput();
      assertThat(second.exitCode()).isZero();
    }
    try (JarProcess third = console()) {
      third.await("asked: Band number");
      assertThat(third.output()).doesNotContain("unfinished bird was found");
    }
  }
}
