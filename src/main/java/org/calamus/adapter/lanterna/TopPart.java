package org.calamus.adapter.lanterna;

import java.util.List;
import org.calamus.core.dialogue.View;

/** The top of the screen: station, mode, level bar and health, each always in the same place. */
final class TopPart {

  private static final int WIDE = 100;
  private static final int MODE_CELLS = 15;

  /** The level at which the bar begins, in decibels below full scale; a quiet room is near it. */
  private static final int BAR_FLOOR = -60;

  private TopPart() {}

  static void draw(Sheet sheet, View view) {
    int mode = modeColumn(sheet);
    sheet.put(1, Layout.TOP, view.station(), mode - 3, Ink.STRONG);
    sheet.put(mode, Layout.TOP, boxed(view.mode()), ink(view.mode()));
    drawLevel(sheet, view.decibels());
    drawHealth(sheet, view.health());
    sheet.rule(Layout.LINE, "");
  }

  /** The level bar alone, which changes more often than anything else. */
  static void drawLevel(Sheet sheet, int decibels) {
    int cells = barCells(sheet);
    int filled = Math.round((decibels - BAR_FLOOR) * cells / (float) -BAR_FLOOR);
    int full = Math.min(Math.max(filled, 0), cells);
    String block = String.valueOf(sheet.strokes().block());
    String faint = String.valueOf(sheet.strokes().faint());
    int column = modeColumn(sheet) + MODE_CELLS + 1;
    int next = sheet.put(column, Layout.TOP, block.repeat(full), Ink.PLAIN);
    sheet.put(next, Layout.TOP, faint.repeat(cells - full), Ink.PLAIN);
  }

  private static void drawHealth(Sheet sheet, List<View.Health> health) {
    int slot = sheet.width() / Math.max(health.size(), 1);
    for (int i = 0; i < health.size(); i++) {
      View.Health part = health.get(i);
      String name = part.part().word();
      int column = i * slot + 1;
      if (!part.isUp() && !part.isDown()) {
        sheet.put(column, Layout.HEALTH, " - " + name + " off", slot - 2, Ink.PLAIN);
        continue;
      }
      if (part.isDown()) {
        sheet.put(column, Layout.HEALTH, " X " + name + " DOWN ", slot - 2, Ink.ALERT_FILLED);
        continue;
      }
      String device = sheet.width() >= WIDE && !part.sentence().isBlank() ? ": " : "";
      String shown = device.isEmpty() ? "" : device + part.sentence();
      sheet.put(column, Layout.HEALTH, " + " + name + " ok" + shown, slot - 2, Ink.PLAIN);
    }
  }

  private static int barCells(Sheet sheet) {
    return sheet.width() >= WIDE ? 20 : 10;
  }

  private static int modeColumn(Sheet sheet) {
    return sheet.width() - 1 - barCells(sheet) - 1 - MODE_CELLS;
  }

  private static String boxed(View.Mode mode) {
    // the longest words fill the box without a mark
    String mark = mode == View.Mode.PRESS_TO_TALK ? "" : mark(mode) + " ";
    String text = " " + mark + mode.word();
    return text + " ".repeat(Math.max(MODE_CELLS - text.length(), 0));
  }

  private static String mark(View.Mode mode) {
    return switch (mode) {
      case KEYPAD -> "###";
      case LISTENING -> "( )";
      case HEARING -> "(o)";
      case SPEAKING -> "<<<";
      case CHECK -> "???";
      case PAUSED -> "| |";
      case PRESS_TO_TALK -> "";
    };
  }

  private static Ink ink(View.Mode mode) {
    return switch (mode) {
      case KEYPAD, LISTENING, PRESS_TO_TALK -> Ink.STRONG;
      case HEARING, SPEAKING -> Ink.FILLED;
      case CHECK, PAUSED -> Ink.ALERT_FILLED;
    };
  }
}
