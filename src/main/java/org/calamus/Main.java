package org.calamus;

import org.calamus.boot.Cli;

/** Starts Calamus: hands the arguments to the command line and leaves with its exit code. */
public final class Main {

  private Main() {}

  /**
   * Entry point.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    System.exit(Cli.run(args));
  }
}
