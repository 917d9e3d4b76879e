package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CliTest {

  @TempDir Path folder;

  /** The ears move standard error to the log for good: "write them down now" must not go there. */
  @Test
  void runSaysAFailureOnStandardOutput() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "no folder");
    PrintStream usual = System.out;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int exitCode;
    try (PrintStream caught = new PrintStream(out, true, StandardCharsets.UTF_8)) {
      System.setOut(caught);
      exitCode =
          Cli.run(
              new String[] {
                "capture",
                "--plain",
                "--keypad",
                "--quiet",
                "--data",
                file.toString(),
                "--cache",
                folder.resolve("cache").toString()
              });
    } finally {
      System.setOut(usual);
    }
    assertThat(exitCode).isEqualTo(ExitCode.FAILURE);
    assertThat(out.toString(StandardCharsets.UTF_8)).contains(file + " is not a folder; give");
  }
}
