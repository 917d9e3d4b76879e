package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.util.Locale;
import org.calamus.adapter.lanterna.Redraws;

/** What a drawing of the screen costs, as a table. */
final class Redrawing {

  private static final int WARMING = 1_000;
  private static final int ROUNDS = 400;

  private Redrawing() {}

  /** Prints the table. */
  public static void main(String[] args) throws IOException {
    print(System.out);
    System.exit(0); // the terminal library keeps a thread
  }

  static void print(PrintStream out) throws IOException {
    out.printf(Locale.ROOT, "%-26s %9s %8s %8s%n", "drawn anew", "window", "bytes", "ms");
    for (Redraws.Cost cost : new Redraws(WARMING, ROUNDS).costs()) {
      String window = cost.columns() + "x" + cost.rows();
      out.printf(
          Locale.ROOT,
          "%-26s %9s %8d %8.2f%n",
          cost.name(),
          window,
          cost.bytes(),
          cost.micros() / 1_000);
    }
  }
}
