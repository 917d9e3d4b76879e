package org.calamus.core.dialogue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A page that is shown in place of the record, already in words. A screen lays its rows out below
 * each other from {@link #first} on, as many as it has room for; one that has room for more shows
 * those before as well.
 *
 * @param title what the page is
 * @param rows all of its rows, whether there is room for them or not
 * @param first the row from which on they are shown, from 0; 0 where there are none
 * @param chosen the number of the row that is chosen, as it stands in the row; empty where none is
 */
public record Page(String title, List<Row> rows, int first, Optional<String> chosen) {

  /** The rows that every window of the least size has room for: so far one leafs. */
  public static final int SCREENFUL = 14;

  /** Copies the list. */
  public Page {
    Objects.requireNonNull(title);
    Objects.requireNonNull(chosen);
    rows = List.copyOf(rows);
  }

  /** What a row is. */
  public enum Look {
    /** The title of what comes below it; begins at the edge. */
    TITLE,
    /** The names of columns; stands where text stands. */
    HEAD,
    /** Something to read. */
    TEXT,
    /** Something wrong. */
    WRONG
  }

  /**
   * A row.
   *
   * @param look what it is
   * @param number the number by which it is chosen; empty where it cannot be
   * @param mark up to three signs that say how it stands; may be empty
   * @param text what it says, 70 cells at most
   * @param more what it says where there is room for more; may be empty
   */
  public record Row(Look look, String number, String mark, String text, String more) {

    /** Checks that every part is there. */
    public Row {
      Objects.requireNonNull(look);
      Objects.requireNonNull(number);
      Objects.requireNonNull(mark);
      Objects.requireNonNull(text);
      Objects.requireNonNull(more);
    }

    /** A row that cannot be chosen. */
    static Row of(Look look, String text) {
      return new Row(look, "", "", text, "");
    }

    /** The same with a number. */
    Row numbered(String other) {
      return new Row(look, other, mark, text, more);
    }
  }
}
