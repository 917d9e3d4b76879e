package org.calamus.core.dialogue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The page that is shown and where on it the bander is. Its rows were made when it was opened,
 * since they may rest on all records of the season.
 *
 * @param name which page
 * @param opened what was opened from one of its rows; empty while the page itself is shown
 * @param before where it was opened from; empty while the page itself is shown
 * @param title the title
 * @param rows the rows
 * @param first the row from which on they are shown, from 0
 * @param digits the digits struck, which are the number of the row that is chosen; may be empty
 * @param trail what the record that is shown whole has gone through; empty where none is shown, or
 *     the store has not answered yet
 */
record Browsing(
    PageName name,
    Optional<PageRow.Subject> opened,
    Optional<Browsing> before,
    String title,
    List<PageRow> rows,
    int first,
    String digits,
    Optional<Trail> trail) {

  Browsing {
    Objects.requireNonNull(name);
    Objects.requireNonNull(opened);
    Objects.requireNonNull(before);
    Objects.requireNonNull(trail);
    rows = PageRow.numbered(rows);
    first = Math.max(0, Math.min(first, rows.size() - Page.SCREENFUL));
  }

  /** A page from its first row on. */
  static Browsing atTop(PageName name, PageContent content) {
    Optional<Browsing> none = Optional.empty();
    return new Browsing(
        name, Optional.empty(), none, content.title(), content.rows(), 0, "", Optional.empty());
  }

  /** What is opened from a row. */
  Browsing opening(PageRow.Subject subject, PageContent content) {
    return new Browsing(
        name,
        Optional.of(subject),
        Optional.of(this),
        content.title(),
        content.rows(),
        0,
        "",
        Optional.empty());
  }

  /** The same place with what it says now. */
  Browsing saying(PageContent content) {
    return new Browsing(
        name, opened, before, content.title(), content.rows(), first, digits, trail);
  }

  /** The same place, and what the record that is shown there has gone through. */
  Browsing telling(Trail told) {
    return new Browsing(name, opened, before, title, rows, first, digits, Optional.of(told));
  }

  /** Leafs on or back; what was chosen may be out of sight then and is chosen no more. */
  Browsing leafed(int rowsOn) {
    return new Browsing(name, opened, before, title, rows, first + rowsOn, "", trail);
  }

  /** Whether there are rows beyond those that every window shows. */
  boolean canLeaf(int rowsOn) {
    return leafed(rowsOn).first != first;
  }

  /** With other digits; the row of that number comes into sight. */
  Browsing choosing(String struck) {
    int at = indexOf(struck);
    int from = at < 0 || at >= first && at < first + Page.SCREENFUL ? first : at;
    return new Browsing(name, opened, before, title, rows, from, struck, trail);
  }

  /** Whether a row has this number. */
  boolean has(String number) {
    return indexOf(number) >= 0;
  }

  /** The number of the next row that is seen and can be chosen; behind the last the first. */
  String next() {
    int from = Math.max(indexOf(digits) + 1, digits.isEmpty() ? first : 0);
    return Stream.concat(rows.subList(from, rows.size()).stream(), rows.stream())
        .map(row -> row.shown().number())
        .filter(number -> !number.isEmpty())
        .findFirst()
        .orElse("");
  }

  private int indexOf(String number) {
    for (int i = 0; i < rows.size(); i++) {
      if (!number.isEmpty() && rows.get(i).shown().number().equals(number)) {
        return i;
      }
    }
    return -1;
  }

  /** The saved record that is shown whole; empty where none is. */
  Optional<Long> record() {
    return opened.flatMap(
        s -> s instanceof PageRow.Subject.OfRecord of ? Optional.of(of.id()) : Optional.empty());
  }

  /** What the chosen row stands for; empty where none is chosen. */
  Optional<PageRow.Subject> chosen() {
    int at = indexOf(digits);
    return at < 0 ? Optional.empty() : rows.get(at).subject();
  }

  /** Whether any row can be chosen. */
  boolean hasNumbers() {
    return rows.stream().anyMatch(r -> r.subject().isPresent());
  }
}
