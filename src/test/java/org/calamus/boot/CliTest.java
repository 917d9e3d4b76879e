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

  private record Ended(int exitCode, String said) {}

  /** Runs the command line and keeps what it says on standard output. */
  private Ended run(String... arguments) {
    PrintStream usual = System.out;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PrintStream caught = new PrintStream(out, true, StandardCharsets.UTF_8)) {
      System.setOut(caught);
      return new Ended(Cli.run(arguments), out.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(usual);
    }
  }

  /** The ears move standard error to the log for good: "write them down now" must not go there. */
  @Test
  void runSaysAFailureOnStandardOutput() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "no folder");
    Ended ended =
        run(
            "capture",
            "--plain",
            "--keypad",
            "--quiet",
            "--data",
            file.toString(),
            "--cache",
            folder.resolve("cache").toString());
    assertThat(ended.exitCode()).isEqualTo(ExitCode.FAILURE);
    assertThat(ended.said()).contains(file + " is not a folder; give");
  }

  /** A terminal that cannot be drawn on, or a wrong volume, ended without a word. */
  @Test
  void runSaysWhatIsWrongWhereTheLogHasTakenStandardError() {
    Ended ended =
        run("capture", "--plain", "--keypad", "--tone-volume", "0", "--data", folder.toString());
    assertThat(ended.exitCode()).isEqualTo(ExitCode.WRONG_USE);
    assertThat(ended.said()).contains("--tone-volume 0 is not 1 to 100");
  }

  /** Runs the command line and keeps what it says on standard error. */
  private static Ended refused(String... arguments) {
    PrintStream usual = System.err;
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    try (PrintStream caught = new PrintStream(err, true, StandardCharsets.UTF_8)) {
      System.setErr(caught);
      return new Ended(Cli.run(arguments), err.toString(StandardCharsets.UTF_8));
    } finally {
      System.setErr(usual);
    }
  }

  @Test
  void runSaysAWrongOptionInTwoLinesAndNotInAScreenful() {
    Ended ended = refused("capture", "--louder");
    assertThat(ended.exitCode()).isEqualTo(ExitCode.WRONG_USE);
    assertThat(ended.said().lines())
        .containsExactly(
            "Unknown option: '--louder'", "calamus capture --help lists what can be given.");
  }

  @Test
  void runListsTheCommandsForOneThatItDoesNotKnow() {
    assertThat(refused("sing").said()).contains("'sing'", "capture", "microphone", "replay");
    assertThat(refused("captur").said()).contains("Did you mean: calamus capture?");
  }
}
