package org.calamus.adapter.sqlite;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A {@link Writer} in a process of its own, which can be killed. */
final class OtherProcess implements AutoCloseable {

  private final Process process;
  private final BufferedReader lines;

  private OtherProcess(List<String> command) throws IOException {
    process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    lines = process.inputReader(StandardCharsets.UTF_8);
  }

  static OtherProcess start(Path folder, Path natives, String task) throws IOException {
    return start(List.of(), folder, natives, task);
  }

  /** Starts it behind a command that runs the command which follows it. */
  static OtherProcess start(List<String> before, Path folder, Path natives, String task)
      throws IOException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:-UsePerfData", "-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(Writer.class.getName(), folder.toString(), natives.toString(), task));
    return new OtherProcess(command);
  }

  long pid() {
    return process.pid();
  }

  /** The next lines it prints; fewer where it ends before. */
  List<String> next(int count) throws IOException {
    List<String> read = new ArrayList<>();
    for (String line; read.size() < count && (line = lines.readLine()) != null; ) {
      read.add(line);
    }
    return read;
  }

  /** What it still prints before it ends by itself. */
  List<String> rest() throws IOException {
    return next(Integer.MAX_VALUE);
  }

  /** Kills it with no chance to tidy up, and gives what it had printed by then. */
  List<String> kill() throws IOException {
    // by its handle, since Process.destroyForcibly closes the stream with what is still in it
    process.toHandle().destroyForcibly();
    List<String> printed = rest();
    close();
    return printed;
  }

  @Override
  public void close() {
    process.destroyForcibly();
    process.onExit().orTimeout(20, TimeUnit.SECONDS).join();
  }
}
