package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.rule.BandString;

/**
 * A row of a page with what it stands for.
 *
 * @param shown the row as shown
 * @param subject what is opened where the row is chosen; empty where there is nothing to open
 */
record PageRow(Page.Row shown, Optional<Subject> subject) {

  /** The cells that a row's text may have. */
  private static final int CELLS = 70;

  /** The cells of a word behind a value, and a blank before it. */
  private static final int END_CELLS = 10;

  PageRow {
    Objects.requireNonNull(shown);
    Objects.requireNonNull(subject);
  }

  /** What a row stands for. */
  sealed interface Subject {

    /**
     * A saved record.
     *
     * @param id its number in the store
     */
    record OfRecord(long id) implements Subject {}

    /**
     * A string of bands.
     *
     * @param string the string
     */
    record OfString(BandString string) implements Subject {}

    /**
     * The birds of a species on the day.
     *
     * @param code the species code; empty for birds without one
     */
    record OfSpecies(Optional<String> code) implements Subject {}
  }

  static PageRow title(String text) {
    return new PageRow(Page.Row.of(Page.Look.TITLE, text), Optional.empty());
  }

  static PageRow head(String text) {
    return new PageRow(Page.Row.of(Page.Look.HEAD, text), Optional.empty());
  }

  static PageRow text(String text) {
    return new PageRow(Page.Row.of(Page.Look.TEXT, text), Optional.empty());
  }

  static PageRow of(Page.Look look, String mark, String text) {
    return new PageRow(new Page.Row(look, "", mark, text, ""), Optional.empty());
  }

  /** A row that can be chosen; it gets its number when the page is put together. */
  static PageRow chosen(String mark, String text, String more, Subject subject) {
    return new PageRow(new Page.Row(Page.Look.TEXT, "", mark, text, more), Optional.of(subject));
  }

  /** A named value: the name has 18 cells, the value as many lines as it needs. */
  static List<PageRow> named(String mark, String name, String value, Page.Look look) {
    List<PageRow> rows = new ArrayList<>();
    for (String line : wrapped(value, CELLS - 18)) {
      String front = rows.isEmpty() ? name : "";
      rows.add(of(look, rows.isEmpty() ? mark : "", PageText.padded(front, 18) + line));
    }
    return rows;
  }

  /**
   * A named value with a word behind it, in a column of its own.
   *
   * @param end the word, 9 cells at most; may be empty
   * @param more what is said where there is room for more; may be empty
   */
  static List<PageRow> named(String mark, String name, String value, String end, String more) {
    List<PageRow> rows = new ArrayList<>();
    for (String line : wrapped(value, CELLS - 18 - END_CELLS)) {
      boolean isFirst = rows.isEmpty();
      String text = PageText.padded(isFirst ? name : "", 18) + line;
      String ended = PageText.padded(text, CELLS - END_CELLS + 1) + (isFirst ? end : "");
      Page.Row row =
          new Page.Row(
              Page.Look.TEXT, "", isFirst ? mark : "", ended.stripTrailing(), isFirst ? more : "");
      rows.add(new PageRow(row, Optional.empty()));
    }
    return rows;
  }

  /** A sentence over as many rows as it needs. */
  static List<PageRow> sentence(String mark, String sentence) {
    List<PageRow> rows = new ArrayList<>();
    for (String line : wrapped(sentence, CELLS)) {
      rows.add(of(Page.Look.TEXT, rows.isEmpty() ? mark : "", line));
    }
    return rows;
  }

  private static List<String> wrapped(String text, int cells) {
    return PageText.wrapped(text, cells);
  }

  /** Numbers the rows that can be chosen, from 1. */
  static List<PageRow> numbered(List<PageRow> rows) {
    List<PageRow> numbered = new ArrayList<>();
    int number = 0;
    for (PageRow row : rows) {
      boolean canBeChosen = row.subject.isPresent();
      number += canBeChosen ? 1 : 0;
      numbered.add(
          canBeChosen ? new PageRow(row.shown.numbered(String.valueOf(number)), row.subject) : row);
    }
    return List.copyOf(numbered);
  }
}
