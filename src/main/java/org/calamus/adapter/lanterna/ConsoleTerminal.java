package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.ansi.UnixTerminal;
import java.io.BufferedOutputStream;
import java.io.File;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The terminal that the process was started in, reached through {@code /dev/tty}, so that
 * redirected standard streams neither matter nor are touched.
 *
 * <p>Lanterna leaves its private mode on every way out: when it is closed, and in a shutdown hook
 * of its own. Drawing must have ended before, or the last frame lands on the shell's screen; {@link
 * #exitPrivateMode} sees to that.
 */
final class ConsoleTerminal extends UnixTerminal {

  private static final String TTY = "/dev/tty";
  private static final int OUTPUT_BYTES = 1 << 16;

  private static final long STTY_MILLIS = 1_500;

  /** Terminals mark the edges of pasted text when told to (xterm, "bracketed paste mode"). */
  private static final byte[] MARK_PASTES = sequence("[?2004h");

  private static final byte[] PASTES_UNMARKED = sequence("[?2004l");

  /**
   * The keypad's keys as their characters (VT100, "keypad numeric mode"). A program that was killed
   * may have left the other mode, in which macOS Terminal sends for plus what others send for the
   * comma.
   */
  private static final byte[] KEYPAD_IN_CHARACTERS = sequence(">");

  private static final Pattern SIZE = Pattern.compile("(\\d+) (\\d+)");

  private final Keyboard keyboard;
  private final Surroundings surroundings;
  private final AtomicReference<Leaving> leaving = new AtomicReference<>(() -> true);

  /** Ends the drawing before the terminal is given back. */
  @FunctionalInterface
  interface Leaving {
    /** Waits a short time; tells whether nothing is drawn any more. */
    boolean drawingEnded();
  }

  private ConsoleTerminal(Keyboard keyboard, Surroundings surroundings) throws IOException {
    super(
        keyboard,
        new BufferedOutputStream(new FileOutputStream(TTY), OUTPUT_BYTES),
        surroundings.charset(),
        CtrlCBehaviour.TRAP);
    this.keyboard = keyboard;
    this.surroundings = surroundings;
  }

  /**
   * Opens the terminal and takes its keys over.
   *
   * @throws IOException where the process has no terminal
   */
  static ConsoleTerminal open(Surroundings surroundings) throws IOException {
    ConsoleTerminal terminal =
        new ConsoleTerminal(new Keyboard(new FileInputStream(TTY)), surroundings);
    Decoding.teach(terminal.getInputDecoder());
    return terminal;
  }

  /** Sets what must have ended before the terminal is given back. */
  void beforeLeaving(Leaving before) {
    leaving.set(before);
  }

  /** Whether the window was closed or the line to it cut. */
  boolean isGone() {
    return keyboard.isGone();
  }

  @Override
  public void enterPrivateMode() throws IOException {
    super.enterPrivateMode();
    writeToTerminal(MARK_PASTES);
    writeToTerminal(KEYPAD_IN_CHARACTERS);
    // Ctrl-S would freeze the console, Ctrl-Z suspend it and Ctrl-\ make Java print on the screen;
    // Lanterna turns off Ctrl-C only. It restores all of them at the end.
    runSTTYCommand("-ixon", "-ixoff", "-iexten", "susp", "undef", "quit", "undef");
  }

  @Override
  public void exitPrivateMode() throws IOException {
    if (!leaving.get().drawingEnded()) {
      // the drawing thread hangs in a write, and so would this one
      throw new IOException("the terminal takes no output");
    }
    writeToTerminal(PASTES_UNMARKED);
    super.exitPrivateMode();
  }

  /**
   * Asks the system, not the terminal as Lanterna would: one that does not answer costs five
   * seconds each time, and serial lines are such.
   */
  @Override
  protected TerminalSize findTerminalSize() throws IOException {
    Matcher size = SIZE.matcher(runSTTYCommand("size"));
    if (size.matches()) {
      int rows = Integer.parseInt(size.group(1));
      int columns = Integer.parseInt(size.group(2));
      if (rows > 0 && columns > 0) {
        return new TerminalSize(columns, rows);
      }
    }
    return new TerminalSize(surroundings.columns(), surroundings.rows());
  }

  /**
   * Runs {@code stty}. It waits until the terminal has taken all output; where that takes long it
   * is left to itself, so that a terminal that takes none cannot hold up the end of the process.
   */
  @Override
  protected String exec(String... command) throws IOException {
    Process process =
        new ProcessBuilder(command)
            .redirectInput(ProcessBuilder.Redirect.from(new File(TTY)))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      if (!process.waitFor(STTY_MILLIS, TimeUnit.MILLISECONDS)) {
        throw new IOException("the terminal takes no output");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while setting up the terminal");
    }
    // a few words at most: they wait in the pipe
    try (InputStream output = process.getInputStream()) {
      return new String(output.readAllBytes(), StandardCharsets.US_ASCII).strip();
    }
  }

  private static byte[] sequence(String tail) {
    return ("\u001b" + tail).getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * The bytes of the keys. A reader that looks before it reads never sees the end of a terminal,
   * and Java's hides the error; so it is kept here.
   */
  private static final class Keyboard extends FilterInputStream {

    private volatile boolean isGone;

    Keyboard(InputStream tty) {
      super(tty);
    }

    boolean isGone() {
      return isGone;
    }

    @Override
    public int available() throws IOException {
      try {
        return super.available();
      } catch (IOException e) {
        isGone = true;
        throw e;
      }
    }
  }
}
