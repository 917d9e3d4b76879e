package org.calamus.support;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/** A shell in a terminal that is real as far as a program can tell: a window of tmux. */
public final class TmuxWindow implements AutoCloseable {

  /** What the shell shows when it waits for a command. */
  public static final String PROMPT = "ready>";

  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(60);
  private static final long LOOK_AGAIN_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  private final Path tmux;
  private final Path socket;

  private TmuxWindow(Path tmux, Path socket) {
    this.tmux = tmux;
    this.socket = socket;
  }

  /** Opens a window with a shell in it, or skips the running test where there is no tmux. */
  public static TmuxWindow open(Path folder, int columns, int rows) {
    TmuxWindow window = new TmuxWindow(Outside.program("tmux"), folder.resolve("tmux"));
    window.tmux(
        "-f",
        "/dev/null",
        "new-session",
        "-d",
        "-x",
        Integer.toString(columns),
        "-y",
        Integer.toString(rows),
        "env -i PATH="
            + System.getenv("PATH")
            + " TERM=screen LANG=C.UTF-8 PS1='"
            + PROMPT
            + " ' /bin/sh");
    window.await(PROMPT);
    return window;
  }

  /** Types a line for the shell. */
  public void line(String text) {
    tmux("send-keys", "-l", text);
    tmux("send-keys", "Enter");
  }

  /** Strikes keys, by the names tmux has for them. */
  public void keys(String... names) {
    List<String> command = new ArrayList<>(List.of("send-keys"));
    command.addAll(List.of(names));
    tmux(command.toArray(new String[0]));
  }

  /** Gives the window another size. */
  public void resize(int columns, int rows) {
    tmux("resize-window", "-x", Integer.toString(columns), "-y", Integer.toString(rows));
  }

  /** What the window shows. */
  public String shown() {
    return tmux("capture-pane", "-p").stripTrailing();
  }

  /** Waits until the window shows each text. */
  public void await(String... texts) {
    for (String text : texts) {
      await(text, () -> shown().contains(text));
    }
  }

  /** Waits until the window does not show the text any more. */
  public void awaitGone(String text) {
    await("the end of " + text, () -> !shown().contains(text));
  }

  /** Whether a program has the screen for itself. */
  public boolean isOnOtherScreen() {
    return tmux("display-message", "-p", "#{alternate_on}").strip().equals("1");
  }

  private void await(String what, BooleanSupplier isSo) {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!isSo.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("waited in vain for: " + what + "\n" + shown());
      }
      LockSupport.parkNanos(LOOK_AGAIN_NANOS);
    }
  }

  private String tmux(String... arguments) {
    List<String> command = new ArrayList<>(List.of(tmux.toString(), "-S", socket.toString()));
    command.addAll(List.of(arguments));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().remove("TMUX");
    builder.environment().put("LC_ALL", "C.UTF-8");
    try {
      Process process = builder.start();
      return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    tmux("kill-server");
  }
}
