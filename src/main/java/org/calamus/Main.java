package org.calamus;

/** Starts Calamus: parses the arguments and hands over. */
public final class Main {

  private Main() {}

  /**
   * Entry point.
   *
   * @param args the command line
   */
  public static void main(String[] args) {}
}
