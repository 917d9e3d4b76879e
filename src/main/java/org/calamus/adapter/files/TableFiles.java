package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.rule.AgeClasses;
import org.calamus.core.rule.AgeSeason;
import org.calamus.core.rule.BandLetters;
import org.calamus.port.SettingsException;
import org.calamus.port.Tables;

/**
 * The tables as text: a header of comments with the sources, one line of column names, then one row
 * a line, columns parted by tabs.
 */
public final class TableFiles implements Tables {

  static final String RESOURCES = "/tables";
  private static final int SPECIES_COLUMNS = 9;
  private static final int CODE_COLUMNS = 3;
  private static final int NAME = 2;

  private final Optional<Path> folder;

  /**
   * Over the user's folder; a table there takes the place of the program's of the same name.
   *
   * @param folder need not exist
   */
  public TableFiles(Optional<Path> folder) {
    this.folder = folder;
  }

  @Override
  public SpeciesTable species() {
    List<String> problems = new ArrayList<>();
    List<Species> species = new ArrayList<>();
    for (Row row : rows("species", SPECIES_COLUMNS, problems)) {
      List<String> c = row.cells();
      species.add(
          new Species(
              c.get(0),
              c.get(1),
              c.get(2),
              c.get(3),
              c.get(4),
              range(c.get(5), c.get(6), row.where(), problems),
              range(c.get(7), c.get(8), row.where(), problems)));
    }
    refuse(problems);
    return new SpeciesTable(species);
  }

  @Override
  public CodeTable codes(String name) {
    List<String> problems = new ArrayList<>();
    List<CodeTable.Row> rows =
        rows(name, CODE_COLUMNS, problems).stream()
            .map(Row::cells)
            .map(c -> new CodeTable.Row(c.get(0), c.get(1), c.get(2)))
            .toList();
    refuse(problems);
    return new CodeTable(name, rows);
  }

  @Override
  public AgeClasses ageClasses() {
    return new RuleTables(folder).classes();
  }

  @Override
  public AgeSeason ageSeason() {
    return new RuleTables(folder).season();
  }

  @Override
  public BandLetters bandLetters() {
    return new RuleTables(folder).letters();
  }

  private static void refuse(List<String> problems) {
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
  }

  private record Row(String where, List<String> cells) {}

  private List<Row> rows(String name, int columns, List<String> problems) {
    String file = name + ".tsv";
    String shown = TextSource.shown(folder, "tables", file);
    List<String> lines = TextSource.lines(folder, RESOURCES, file);
    List<Row> rows = new ArrayList<>();
    boolean hasHeader = false;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      Row row = new Row(shown + ":" + (i + 1), cells(line));
      Optional<String> problem =
          hasHeader ? problem(row, columns, rows) : headerProblem(row, columns);
      problem.ifPresent(p -> problems.add(row.where() + ": " + p));
      if (hasHeader && problem.isEmpty()) {
        rows.add(row);
      }
      hasHeader = true;
    }
    if (rows.isEmpty() && problems.isEmpty()) {
      problems.add(shown + ": the table has no row; add one, or take the file away.");
    }
    return rows;
  }

  static List<String> cells(String line) {
    return Arrays.stream(line.split("\t", -1)).map(String::strip).toList();
  }

  private static Optional<String> headerProblem(Row row, int columns) {
    return row.cells().size() == columns && row.cells().get(0).equals("code")
        ? Optional.empty()
        : Optional.of(
            "the first line names the "
                + columns
                + " columns, parted by tabs, and begins with \"code\".");
  }

  /** What is wrong with a row, where something is. */
  private static Optional<String> problem(Row row, int columns, List<Row> before) {
    List<String> cells = row.cells();
    if (cells.size() != columns) {
      return Optional.of(cells.size() + " columns parted by tabs, and not " + columns + ".");
    }
    if (cells.get(0).isEmpty() || cells.get(NAME).isEmpty()) {
      return Optional.of("a row needs a code and a name.");
    }
    return before.stream().flatMap(other -> sameAs(row, other).stream()).findFirst();
  }

  private static Optional<String> sameAs(Row row, Row other) {
    String code = row.cells().get(0);
    String digits = row.cells().get(1);
    if (code.equalsIgnoreCase(other.cells().get(0))) {
      return Optional.of(twice("code", code, other));
    }
    return !digits.isEmpty() && digits.equals(other.cells().get(1))
        ? Optional.of(twice("number", digits, other))
        : Optional.empty();
  }

  private static String twice(String what, String text, Row other) {
    return "the " + what + " " + text + " stands already at " + other.where() + ".";
  }

  private static Optional<Range> range(
      String least, String most, String where, List<String> problems) {
    if (least.isEmpty() && most.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new Range(new BigDecimal(least), new BigDecimal(most)));
    } catch (IllegalArgumentException e) {
      problems.add(
          where + ": \"" + least + "\" to \"" + most + "\" is no range; give two numbers or none.");
      return Optional.empty();
    }
  }
}
