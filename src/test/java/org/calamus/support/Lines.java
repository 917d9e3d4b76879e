package org.calamus.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The lines that a program prints, as they come. */
public final class Lines {

  private final BlockingQueue<String> lines = new LinkedBlockingQueue<>();

  /** Begins to read what a program prints. */
  public Lines(Process program) {
    Thread reader =
        new Thread(
            () -> {
              try (BufferedReader in = program.inputReader();
                  Stream<String> all = in.lines()) {
                all.forEach(lines::add);
              } catch (IOException | UncheckedIOException e) {
                // ended by the test while it was being read
                lines.add("UNREADABLE " + e.getMessage());
              }
            },
            "lines");
    reader.setDaemon(true);
    reader.start();
  }

  /** The next line that begins so; others before it are dropped. Waits 30 s at most. */
  public String next(String beginning) throws InterruptedException {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
    StringBuilder dropped = new StringBuilder();
    String line = lines.poll(30, TimeUnit.SECONDS);
    while (line != null && !line.startsWith(beginning)) {
      dropped.append(line).append('\n');
      line = lines.poll(deadline - System.nanoTime(), TimeUnit.NANOSECONDS);
    }
    assertThat(line).as("a line that begins with %s after\n%s", beginning, dropped).isNotNull();
    return line;
  }
}
