package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.screen.Screen.RefreshType;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.ansi.ANSITerminal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.calamus.core.dialogue.View;

/**
 * What a drawing costs: processor time, and bytes sent to the terminal, which are what a slow line
 * such as a far ssh feels.
 */
public final class Redraws {

  private final int warming;
  private final int rounds;

  /**
   * Measures so often.
   *
   * @param warming drawings that do not count
   * @param rounds drawings that do, at least 1
   */
  public Redraws(int warming, int rounds) {
    this.warming = warming;
    this.rounds = rounds;
  }

  /**
   * A kind of drawing.
   *
   * @param name what changed
   * @param columns the window
   * @param rows the window
   * @param bytes sent for one drawing
   * @param micros the median of the time of one drawing
   */
  public record Cost(String name, int columns, int rows, int bytes, double micros) {}

  /** Measures each kind at both sizes. */
  public List<Cost> costs() throws IOException {
    List<Cost> costs = new ArrayList<>();
    for (TerminalSize size : List.of(new TerminalSize(80, 24), new TerminalSize(120, 40))) {
      View asking = Situation.KEYING.talk().view();
      View keyed = Situation.NOT_ENTERED.talk().view();
      costs.add(cost("the first whole picture", size, asking, asking, true));
      costs.add(cost("the level alone", size, asking.withDecibels(-38), asking.withDecibels(-12)));
      costs.add(cost("a message", size, asking, keyed));
      costs.add(cost("a value taken", size, asking, Situation.VALUE_TAKEN.talk().view()));
      costs.add(cost("a question", size, asking, Situation.KEEP.talk().view()));
      costs.add(cost("a list of 28 codes", size, asking, Situation.CHOOSING_CODES.talk().view()));
    }
    return costs;
  }

  private Cost cost(String name, TerminalSize size, View before, View after) throws IOException {
    return cost(name, size, before, after, false);
  }

  private Cost cost(String name, TerminalSize size, View before, View after, boolean isWhole)
      throws IOException {
    Counting out = new Counting();
    try (Fixed terminal = new Fixed(out, size);
        TerminalScreen screen = new TerminalScreen(terminal)) {
      screen.setCursorPosition(null);
      screen.startScreen();
      Cells cells = new Cells(Ink.Palette.SIXTEEN);
      RefreshType type = isWhole ? RefreshType.COMPLETE : RefreshType.DELTA;
      List<Long> nanos = new ArrayList<>();
      int bytes = 0;
      for (int i = 0; i < warming + rounds; i++) {
        draw(screen, cells, before, before);
        screen.refresh(RefreshType.DELTA);
        out.count = 0;
        long start = System.nanoTime();
        draw(screen, cells, before, after);
        screen.refresh(type);
        if (i >= warming) {
          nanos.add(System.nanoTime() - start);
        }
        bytes = out.count;
      }
      nanos.sort(null);
      double micros = nanos.get(nanos.size() / 2) / 1_000.0;
      return new Cost(name, size.getColumns(), size.getRows(), bytes, micros);
    }
  }

  /** As the loop does it: where the level alone is new, only the bar. */
  private static void draw(TerminalScreen screen, Cells cells, View before, View after) {
    Sheet sheet = new Sheet(screen.newTextGraphics(), cells, Strokes.DRAWN);
    boolean isLevel = !before.equals(after) && before.withDecibels(after.decibels()).equals(after);
    if (isLevel) {
      Picture.drawLevel(sheet, after);
    } else {
      Picture.draw(sheet, after);
    }
  }

  private static final class Counting extends OutputStream {
    private int count;

    @Override
    public void write(int b) {
      count++;
    }

    @Override
    public void write(byte[] bytes, int offset, int length) {
      count += length;
    }
  }

  private static final class Fixed extends ANSITerminal {
    private final TerminalSize size;

    Fixed(OutputStream out, TerminalSize size) {
      super(new ByteArrayInputStream(new byte[0]), out, StandardCharsets.UTF_8);
      this.size = size;
    }

    @Override
    protected TerminalSize findTerminalSize() {
      return size;
    }
  }
}
