package org.calamus.boot;

/** The exit codes, as documented. */
final class ExitCode {

  /** Everything was done. */
  static final int DONE = 0;

  /** Something failed that should have worked. */
  static final int FAILURE = 1;

  /** The command line or a file that the user wrote cannot be used. */
  static final int WRONG_USE = 2;

  /** Something that is needed is not there: a model, a microphone, a terminal. */
  static final int MISSING = 3;

  private ExitCode() {}
}
