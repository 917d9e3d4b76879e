package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.calamus.support.JarProcess;
import org.calamus.support.ShortForm;
import org.calamus.support.TmuxWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The console on a terminal, as the bander sees it. */
class TerminalIT {

  private static final String ENDED = "it has ended";

  @TempDir Path folder;
  private TmuxWindow window;

  @BeforeEach
  void openWindow() {
    window = TmuxWindow.open(folder, 80, 24);
  }

  @AfterEach
  void closeWindow() {
    if (window != null) {
      window.close();
    }
  }

  @Test
  void takesAWholeBirdByKeypadAlone() throws IOException {
    capture();
    enter("284155601");
    window.await("> Species", "2841-55601");
    enter("7270");
    window.await("> Age", "White-breasted Nuthatch");
    enter("1");
    window.await("> Sex", "AHY");
    enter("5");
    window.await("> Wing chord, mm", "female");
    enter("29");
    window.await("Keep 29 mm?", "would fit");
    window.keys("-");
    window.awaitGone("Keep 29 mm?");
    enter("92");
    window.await("> Mass, g", "92 mm");
    window.keys("*");
    window.await("> Save this record?");
    window.keys("+");
    window.await("02 Band number");
    window.keys("0", "7");
    window.await("> Sex");
    enter("4");
    window.await("> Mass, g", "M  male");
    enter("22.3");
    window.await("> Save this record?", "22.3 g");
    window.keys("Enter");
    window.await("Saved record 1.", "saved 1", "next band 2841-55602");
    assertThat(window.shown().lines()).hasSize(24).allMatch(line -> line.length() <= 80);

    window.keys("+", "9", "9");
    window.await(ENDED);
    assertThat(window.isOnOtherScreen()).isFalse();
    assertThat(window.shown()).doesNotContain("Band number", "Exception");
  }

  @Test
  void losesNothingWhereTheWindowChangesInMidRecord() throws IOException {
    capture();
    enter("284155601");
    window.await("> Species");
    enter("7270");
    window.await("> Age");
    window.resize(50, 10);
    window.await("This window is too small");
    window.keys("1", "Enter");
    window.resize(120, 40);
    window.await("> Sex", "2841-55601", "White-breasted Nuthatch", "AHY");
    enter("4");
    window.await("> Wing chord, mm", "M  male");
    window.resize(80, 24);
    window.await("+ store ok", "M  male", "nine two [92 Enter] wing");
    window.keys("+", "+");
    window.await("Saved record 1.");
    window.resize(120, 40);
    window.await("Last saved", "band 2841-55601  species WBNU  age AHY  sex M");
  }

  @ParameterizedTest
  @ValueSource(strings = {"TERM", "HUP", "INT"})
  void givesTheTerminalBackWhenAskedToEndInMidRecord(String signal) throws IOException {
    window.line("stty -a >" + folder.resolve("before"));
    capture();
    enter("284155601");
    window.await("> Species");
    assertThat(window.isOnOtherScreen()).isTrue();
    new ProcessBuilder("kill", "-" + signal, Long.toString(console().pid())).start();
    window.await(ENDED);
    window.line("stty -a >" + folder.resolve("after") + "; echo it is $((40 + 2))");
    window.await("it is 42");
    assertThat(folder.resolve("after")).hasSameTextualContentAs(folder.resolve("before"));
    assertThat(window.isOnOtherScreen()).isFalse();
    assertThat(window.shown()).contains("echo it is $((40").doesNotContain("Band number");

    capture("An unfinished bird was found: band 2841-55601");
    window.keys("Enter");
    window.await("> Species");
  }

  @Test
  void playsTheDemonstrationAndLeavesItsRecordsOnTheNormalScreen() throws IOException {
    start("demo --fast --cache " + JarProcess.cache() + " --data " + folder.resolve("data"));
    window.await("BEFORE YOU START");
    assertThat(window.isOnOtherScreen()).isTrue();
    window.await("saved 1");
    window.await(ENDED);
    assertThat(window.isOnOtherScreen()).isFalse();
    // the records themselves are looked at where the demonstration prints lines
    assertThat(window.shown().replace("\n", ""))
        .contains("Saved records", "band 2841-55601", "band 2841-55602", "band 2841-55603");
  }

  private void capture() throws IOException {
    capture("> Band number");
  }

  private void capture(String awaited) throws IOException {
    ShortForm.into(folder.resolve("data"));
    start("capture --keypad --quiet --data " + folder.resolve("data"));
    window.await(awaited);
  }

  /** Starts the jar in the window, from a script, so that the command line is not shown. */
  private void start(String arguments) throws IOException {
    Path script = folder.resolve("start");
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Files.writeString(
        script,
        "echo $$ >"
            + folder.resolve("pid")
            + "\nexec "
            + java
            + " -jar "
            + JarProcess.jar()
            + " "
            + arguments
            + "\n");
    window.line("clear; sh " + script + "; echo " + ENDED.replace(" ", "' '"));
  }

  private ProcessHandle console() throws IOException {
    return ProcessHandle.of(Long.parseLong(Files.readString(folder.resolve("pid")).strip()))
        .orElseThrow();
  }

  private void enter(String keys) {
    window.keys(keys, "Enter");
  }
}
