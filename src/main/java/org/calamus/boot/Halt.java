package org.calamus.boot;

/** Ends a command with one sentence for the user and an exit code. */
final class Halt extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final int exitCode;

  Halt(int exitCode, String sentence, Throwable cause) {
    super(sentence, cause);
    this.exitCode = exitCode;
  }

  int exitCode() {
    return exitCode;
  }
}
