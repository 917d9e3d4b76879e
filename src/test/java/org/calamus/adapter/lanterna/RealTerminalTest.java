package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.calamus.support.Outside;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The screen in a terminal that is real as far as the program can tell: a window of tmux. */
class RealTerminalTest {

  private static final String PROMPT = "ready>";

  @TempDir private Path folder;
  private Path tmux;

  @BeforeEach
  void openWindow() throws IOException {
    tmux = Outside.program("tmux");
    Outside.program("stty");
    tmux(
        "-f",
        "/dev/null",
        "new-session",
        "-d",
        "-x",
        "80",
        "-y",
        "24",
        "env -i PATH="
            + System.getenv("PATH")
            + " TERM=screen LANG=C.UTF-8 PS1='"
            + PROMPT
            + " ' /bin/sh");
    awaitShown(PROMPT);
    type("stty -a >" + folder.resolve("before"));
  }

  @AfterEach
  void closeWindow() throws IOException {
    if (tmux != null) {
      tmux("kill-server");
    }
  }

  @Test
  void theScreenWorksInARealTerminalAndGivesItBackOnCtrlC() throws IOException {
    startDemo();
    assertThat(shown()).isEqualTo(Screens.text(Views.asking(), 80, 24).stripTrailing());

    // the keypad as it comes with Num Lock on, off, and in application mode
    tmux("send-keys", "9", "End", ".", "KP5");
    awaitShown(bigRow("91.5"));
    tmux("send-keys", "-H", "1b", "4f", "77");
    awaitShown(bigRow("91.57"));
    // Ctrl-S, Ctrl-Z and Ctrl-\ must neither freeze, suspend nor print
    tmux("send-keys", "C-s", "C-z", "C-\\", "C-q", "2");
    awaitShown(bigRow("91.572"));
    tmux("send-keys", "Space");
    awaitShown(bigRow("TALK"));

    tmux("send-keys", "q");
    awaitShown("Keep 29 mm?");
    tmux("resize-window", "-x", "120", "-y", "40");
    String large = Screens.text(Views.question(), 120, 40).stripTrailing();
    Screens.await("the large picture", () -> shown().equals(large));
    tmux("resize-window", "-x", "50", "-y", "10");
    awaitShown("This window is too small");
    tmux("resize-window", "-x", "80", "-y", "24");
    awaitShown("Keep 29 mm?");

    tmux("send-keys", "C-c");
    awaitShown("the demo has ended");
    assertTerminalIsAsBefore();
  }

  /** A program that was killed may have left it. */
  @Test
  void theKeypadSendsCharactersThoughApplicationModeWasLeftOn() throws IOException {
    type("printf '\\033='");
    Screens.await("application mode", () -> keypadFlag().equals("1"));
    startDemo();
    assertThat(keypadFlag()).isEqualTo("0");
    tmux("send-keys", "C-c");
    awaitShown("the demo has ended");
  }

  private String keypadFlag() {
    try {
      return tmux("display-message", "-p", "#{keypad_flag}").strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void pastedTextIsNotTakenForKeys() throws IOException {
    startDemo();
    tmux("set-buffer", "1234567890\n".repeat(2000));
    tmux("paste-buffer", "-p");
    tmux("send-keys", "7");
    awaitShown(bigRow("7"));
    tmux("send-keys", "C-c");
    awaitShown("the demo has ended");
  }

  @Test
  void theTerminalIsGivenBackWhenTheProcessIsTerminated() throws IOException {
    startDemo();
    tmux("send-keys", "b");
    awaitShown("in hand 0:12");
    signal("TERM");
    awaitShown(PROMPT);
    assertTerminalIsAsBefore();
    assertThat(shown()).doesNotContain("Species", "next band");
  }

  @Test
  void theProcessEndsWhenTheTerminalTakesNoOutputAnyMore() throws IOException {
    startDemo();
    ProcessHandle demo = demo();
    String server = tmux("display-message", "-p", "#{pid}").strip();
    tmux("send-keys", "f");
    run(List.of("kill", "-STOP", server));
    try {
      Screens.await("a full terminal", () -> isBlocked(demo));
      signal("TERM");
      Screens.await("the end of the demo", () -> !demo.isAlive());
    } finally {
      run(List.of("kill", "-CONT", server));
    }
    type("stty sane; echo it is $((40 + 2))");
    awaitShown("it is 42");
  }

  @Test
  void theTerminalIsGivenBackWhenTheDrawingThreadFails() throws IOException {
    startDemo();
    tmux("send-keys", "x");
    awaitShown("the demo has ended");
    assertTerminalIsAsBefore();
    Screens.await(
        "the error's words",
        () -> shown().replace("\n", "").contains("an error on the drawing thread"));
  }

  @Test
  void theSessionEndsWhenTheWindowIsClosedAndTheSignalForItIsIgnored() throws IOException {
    type("trap '' HUP");
    startDemo();
    ProcessHandle demo = demo();
    tmux("kill-server");
    tmux = null;
    Screens.await("the end of the demo", () -> !demo.isAlive());
    assertThat(demo.isAlive()).isFalse();
  }

  private void startDemo() throws IOException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Path start = folder.resolve("start");
    Files.writeString(
        start,
        "echo $$ >"
            + folder.resolve("pid")
            + "\nexec "
            + java
            + " -cp '"
            + System.getProperty("java.class.path")
            + "' "
            + ScreenDemo.class.getName()
            + "\n",
        StandardCharsets.UTF_8);
    type("clear; sh " + start + "; echo the demo has ended");
    awaitShown("next band");
  }

  private ProcessHandle demo() throws IOException {
    String pid = Files.readString(folder.resolve("pid"), StandardCharsets.UTF_8).strip();
    return ProcessHandle.of(Long.parseLong(pid)).orElseThrow();
  }

  /** Whether the demo has used no processor time for a while: its writes do not return. */
  private static boolean isBlocked(ProcessHandle demo) {
    var before = demo.info().totalCpuDuration();
    LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
    return demo.info().totalCpuDuration().equals(before);
  }

  private void signal(String name) throws IOException {
    run(List.of("kill", "-" + name, Long.toString(demo().pid())));
  }

  /** The shell must read, echo and answer as before, with the same terminal settings. */
  private void assertTerminalIsAsBefore() throws IOException {
    Path after = folder.resolve("after");
    type("stty -a >" + after + "; echo it is $((40 + 2))");
    awaitShown("it is 42");
    assertThat(shown()).as("echo").contains("echo it is $((40");
    assertThat(after).as(shown()).hasSameTextualContentAs(folder.resolve("before"));
    String state = tmux("display-message", "-p", "#{alternate_on} #{cursor_flag}").strip();
    assertThat(state).as("alternate screen and cursor").isEqualTo("0 1");
  }

  /** The middle row of large glyphs. */
  private static String bigRow(String text) {
    return BigGlyphs.rows(text, 80, 1, '█').orElseThrow().get(1);
  }

  private void type(String line) throws IOException {
    tmux("send-keys", "-l", line);
    tmux("send-keys", "Enter");
  }

  private void awaitShown(String text) {
    Screens.await(text, () -> shown().contains(text));
  }

  private String shown() {
    try {
      return tmux("capture-pane", "-p").stripTrailing();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String tmux(String... arguments) throws IOException {
    List<String> command = new ArrayList<>(List.of(tmux.toString(), "-S"));
    command.add(folder.resolve("tmux").toString());
    command.addAll(List.of(arguments));
    return run(command);
  }

  private String run(List<String> command) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    Map<String, String> environment = builder.environment();
    environment.remove("TMUX");
    environment.put("LC_ALL", "C.UTF-8");
    Process process = builder.start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    try {
      assertThat(process.waitFor(20, TimeUnit.SECONDS)).as("the end of " + command).isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return output;
  }
}
