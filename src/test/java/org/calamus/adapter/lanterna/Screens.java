package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.TextCharacter;
import com.googlecode.lanterna.screen.Screen.RefreshType;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import com.googlecode.lanterna.terminal.virtual.VirtualTerminal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.calamus.core.dialogue.View;

/** Draws views on terminals that exist in memory only, and reads them back as text. */
final class Screens {

  private static final long PATIENCE_NANOS = TimeUnit.SECONDS.toNanos(20);

  private Screens() {}

  /** A view drawn on a terminal of its own. */
  static VirtualTerminal drawn(View view, int columns, int rows, Ink.Palette palette) {
    try {
      DefaultVirtualTerminal terminal = new DefaultVirtualTerminal(new TerminalSize(columns, rows));
      TerminalScreen screen = new TerminalScreen(terminal);
      screen.setCursorPosition(null);
      screen.startScreen();
      Picture.draw(new Sheet(screen.newTextGraphics(), new Cells(palette), Strokes.DRAWN), view);
      screen.refresh(RefreshType.COMPLETE);
      return terminal;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A view drawn without colour, as text. */
  static String text(View view, int columns, int rows) {
    return text(drawn(view, columns, rows, Ink.Palette.NONE));
  }

  /** What a terminal shows, without the blanks at the ends of lines. */
  static String text(VirtualTerminal terminal) {
    StringBuilder text = new StringBuilder();
    TerminalSize size = terminal.getTerminalSize();
    for (int row = 0; row < size.getRows(); row++) {
      StringBuilder line = new StringBuilder();
      for (int column = 0; column < size.getColumns(); column++) {
        line.append(terminal.getCharacter(column, row).getCharacterString());
      }
      text.append(line.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  /** All cells of a terminal. */
  static List<TextCharacter> cells(VirtualTerminal terminal) {
    List<TextCharacter> cells = new ArrayList<>();
    TerminalSize size = terminal.getTerminalSize();
    for (int row = 0; row < size.getRows(); row++) {
      for (int column = 0; column < size.getColumns(); column++) {
        cells.add(terminal.getCharacter(column, row));
      }
    }
    return cells;
  }

  /** Waits until something is so; fails after a while. */
  static void await(String what, BooleanSupplier isSo) {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!isSo.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("waited in vain: " + what);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
    }
  }
}
