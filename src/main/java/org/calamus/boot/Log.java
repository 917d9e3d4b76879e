package org.calamus.boot;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;

/** The log file: what must not appear on the screen. */
final class Log {

  private static final Charset UTF = StandardCharsets.UTF_8;

  private Log() {}

  /**
   * Sends what libraries print to the log while a screen is up, and lets those be silent that
   * report through their own exceptions as well. Where the log cannot be written, it is dropped.
   */
  static void instead(Path file) {
    Logger.getLogger("org.sqlite").setLevel(Level.OFF);
    Thread.setDefaultUncaughtExceptionHandler(
        (dead, failure) -> failure.printStackTrace(System.err));
    try {
      System.setErr(open(file));
    } catch (IOException e) {
      System.setErr(new PrintStream(OutputStream.nullOutputStream(), true, UTF));
    }
  }

  private static PrintStream open(Path file) throws IOException {
    Files.createDirectories(file.toAbsolutePath().getParent());
    return new PrintStream(
        Files.newOutputStream(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND),
        true,
        UTF);
  }

  /** Adds sentences that nobody waits for; where the log cannot be written, they are dropped. */
  static void add(List<String> sentences, Path file) {
    if (sentences.isEmpty()) {
      return;
    }
    try (PrintStream out = open(file)) {
      sentences.forEach(out::println);
    } catch (IOException e) {
      // "check" says the same at any time
      return;
    }
  }

  /** Keeps the details of a failure and gives one sentence for the user. */
  static String keep(Exception failure, Path file) {
    String safe = "Something went wrong inside Calamus; what was read back as taken is safe. ";
    try (PrintStream out = open(file)) {
      failure.printStackTrace(out);
      return safe + "The details are in " + file + "; start it again.";
    } catch (IOException e) {
      return safe + "Start it again. (" + failure + ")";
    }
  }
}
