package org.calamus.adapter.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One table as text: a header of comments, one line of column names, then one row a line, columns
 * parted by tabs. A row's first column is its name and stands once; so does the column of numbers,
 * where it is filled.
 *
 * @param shown the file's name, for messages
 * @param columns how many columns it has
 * @param rows its rows
 */
record TabTable(String shown, int columns, List<Row> rows) {

  /**
   * What a table must look like.
   *
   * @param first the name of its first column
   * @param widths how many columns it may have
   * @param number the column of numbers that stand once; -1 where there is none
   * @param needed a column that must be filled, beside the first
   */
  record Shape(String first, List<Integer> widths, int number, int needed) {
    private String widthsInWords() {
      return widths.stream().map(String::valueOf).collect(Collectors.joining(" or "));
    }
  }

  /**
   * A row.
   *
   * @param where file and line, for messages
   * @param cells its cells without the blanks around them
   */
  record Row(String where, List<String> cells) {
    String cell(int column) {
      return cells.get(column);
    }

    String code() {
      return cells.get(0).toUpperCase(Locale.ROOT);
    }
  }

  /**
   * Reads a table of the user's folder, or the program's own of the same name.
   *
   * @param folder the user's folder
   * @param name the table's name
   * @param shape what it must look like
   * @param problems where the problems go, one sentence each
   */
  static TabTable read(Optional<Path> folder, String name, Shape shape, List<String> problems) {
    String file = name + ".tsv";
    String shown = TextSource.shown(folder, "tables", file);
    List<String> lines = TextSource.lines(folder, TableFiles.RESOURCES, file);
    List<Row> rows = new ArrayList<>();
    int columns = 0;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      Row row = new Row(shown + ":" + (i + 1), TableFiles.cells(line));
      boolean isHeader = columns == 0;
      Optional<String> problem =
          isHeader ? headerProblem(row, shape) : problem(row, columns, shape, rows);
      problem.ifPresent(p -> problems.add(row.where() + ": " + p));
      if (isHeader) {
        columns = problem.isPresent() ? shape.widths().get(0) : row.cells().size();
      } else if (problem.isEmpty()) {
        rows.add(row);
      }
    }
    if (rows.isEmpty() && problems.isEmpty()) {
      problems.add(shown + ": the table has no row; add one, or take the file away.");
    }
    return new TabTable(shown, columns, rows);
  }

  private static Optional<String> headerProblem(Row row, Shape shape) {
    boolean isHeader =
        shape.widths().contains(row.cells().size()) && row.cell(0).equals(shape.first());
    return isHeader
        ? Optional.empty()
        : Optional.of(
            "the first line names the "
                + shape.widthsInWords()
                + " columns, parted by tabs, and begins with \""
                + shape.first()
                + "\".");
  }

  private static Optional<String> problem(Row row, int columns, Shape shape, List<Row> before) {
    if (row.cells().size() != columns) {
      return Optional.of(row.cells().size() + " columns parted by tabs, and not " + columns + ".");
    }
    if (row.cell(0).isEmpty() || row.cell(shape.needed()).isEmpty()) {
      return Optional.of("a row needs a code and a name.");
    }
    return before.stream().flatMap(other -> sameAs(row, other, shape).stream()).findFirst();
  }

  private static Optional<String> sameAs(Row row, Row other, Shape shape) {
    if (row.cell(0).equalsIgnoreCase(other.cell(0))) {
      return Optional.of(twice("code", row.cell(0), other));
    }
    return shape.number() >= 0
        ? sameNumber(row, row.cell(shape.number()), other, other.cell(shape.number()))
        : Optional.empty();
  }

  /** What is wrong where two rows have one number on the keypad. */
  static Optional<String> sameNumber(Row row, String number, Row other, String otherNumber) {
    boolean isSame = !row.equals(other) && !number.isEmpty() && number.equals(otherNumber);
    return isSame ? Optional.of(twice("number", number, other)) : Optional.empty();
  }

  static String twice(String what, String text, Row other) {
    return "the " + what + " " + text + " stands already at " + other.where() + ".";
  }
}
