package org.calamus.support;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** The finished jar in a process of its own, driven through its input and output. */
public final class JarProcess implements AutoCloseable {

  private static final long PATIENCE_SECONDS = 60;

  private final Process process;
  private final List<String> lines = new ArrayList<>();
  private final Thread reader;

  private JarProcess(Process process) {
    this.process = process;
    this.reader = new Thread(this::read, "reader");
    reader.setDaemon(true);
    reader.start();
  }

  /** The path of the jar, as the build gives it. */
  public static Path jar() {
    Path jar = Path.of(System.getProperty("calamus.jar", "target/calamus.jar"));
    if (!Files.exists(jar)) {
      throw new IllegalStateException(jar + " is not built; run mvn verify");
    }
    return jar.toAbsolutePath();
  }

  /** A cache of the recogniser's model that the tests of one build share. */
  public static Path cache() {
    return Path.of("target", "test-cache").toAbsolutePath();
  }

  /** Starts the jar; what it prints, on both streams, is collected. */
  public static JarProcess start(String... arguments) {
    return start(Map.of(), arguments);
  }

  /** Starts the jar with more in its environment. */
  public static JarProcess start(Map<String, String> environment, String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-jar");
    command.add(jar().toString());
    command.addAll(List.of(arguments));
    try {
      ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
      builder.environment().putAll(environment);
      return new JarProcess(builder.start());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Runs the jar to its end. */
  public static JarProcess run(String... arguments) throws InterruptedException {
    JarProcess jar = start(arguments);
    jar.closeInput();
    jar.exitCode();
    return jar;
  }

  private void read() {
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        synchronized (lines) {
          lines.add(line);
          lines.notifyAll();
        }
      }
    } catch (IOException e) {
      // the process is gone; what it printed is there
      return;
    }
  }

  /** Types into its input. */
  public void type(String text) {
    try {
      process.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
      process.getOutputStream().flush();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Closes its input. */
  public void closeInput() {
    try {
      process.getOutputStream().close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits for a line that holds the text and gives it. */
  public String await(String text) throws InterruptedException {
    return awaitFor(text, PATIENCE_SECONDS);
  }

  /** Waits for a line that holds the text, so many seconds at most, and gives it. */
  public String awaitFor(String text, long seconds) throws InterruptedException {
    return await(line -> line.contains(text), text, seconds);
  }

  /** Waits until so many lines hold the text. */
  public void awaitTimes(String text, int times) throws InterruptedException {
    int[] left = {times};
    await(
        line -> line.contains(text) && --left[0] == 0, times + " times " + text, PATIENCE_SECONDS);
  }

  private String await(Predicate<String> wanted, String name, long seconds)
      throws InterruptedException {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    synchronized (lines) {
      int seen = 0;
      while (true) {
        for (; seen < lines.size(); seen++) {
          if (wanted.test(lines.get(seen))) {
            return lines.get(seen);
          }
        }
        long left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
        if (left <= 0) {
          throw new AssertionError("no line with \"" + name + "\" in:\n" + output());
        }
        lines.wait(left);
      }
    }
  }

  /** Everything printed so far. */
  public String output() {
    synchronized (lines) {
      return String.join("\n", lines);
    }
  }

  /** Waits for its end. */
  public int exitCode() throws InterruptedException {
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("still running after a minute:\n" + output());
    }
    reader.join(TimeUnit.SECONDS.toMillis(PATIENCE_SECONDS));
    return process.exitValue();
  }

  /** Kills it without warning, as a power failure would. */
  public void kill() throws InterruptedException {
    process.destroyForcibly();
    exitCode();
  }

  /** Asks it to end, as the system does at shutdown. */
  public void terminate() {
    process.destroy();
  }

  /** The process id. */
  public long pid() {
    return process.pid();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
