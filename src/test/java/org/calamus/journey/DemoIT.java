package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.calamus.support.JarProcess;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demonstration of the finished jar: real recogniser, real database, recorded sound. */
class DemoIT {

  @Test
  void savesTheExpectedRecords(@TempDir Path data) throws Exception {
    JarProcess demo =
        JarProcess.run(
            "demo",
            "--fast",
            "--plain",
            "--data",
            data.toString(),
            "--cache",
            JarProcess.cache().toString());
    List<String> expected = Files.readAllLines(Path.of("demo-data", "evening.expected"));
    String records = demo.output().substring(demo.output().indexOf("Saved records"));
    assertThat(records).contains(expected);
    assertThat(expected).hasSize(6);
    assertThat(demo.exitCode()).isZero();
    // one value corrected by voice, one refused by a rule, one weighing taken by itself, one
    // history told
    assertThat(demo.output())
        .contains("heard: correction nine two")
        .contains("is already on a bird in these records")
        .contains("22.3 g (measured)")
        .contains("history: 2026-06-20 QX  N  WBNU  SY  M  wing 92 mm");
  }
}
