package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;

/** Opens the terminal to draw on; a test gives one that exists in memory only. */
@FunctionalInterface
interface TerminalSource {
  /**
   * Opens it.
   *
   * @throws IOException where there is none
   */
  Terminal open() throws IOException;
}
