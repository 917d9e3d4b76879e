package org.calamus.adapter.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.CodeTable;
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
  private static final String OWN_SPECIES = "own-species";
  private static final int CODE_COLUMNS = 3;
  private static final int NUMBER = 1;
  private static final int NAME = 2;

  private final Optional<Path> folder;

  /**
   * Over the user's folder; a table there takes the place of the program's of the same name. What a
   * station knows better of single species goes into {@code own-species.tsv} there: its rows take
   * the place of the rows of the same code, and the others are added.
   *
   * @param folder need not exist
   */
  public TableFiles(Optional<Path> folder) {
    this.folder = folder;
  }

  @Override
  public SpeciesTable species() {
    List<String> problems = new ArrayList<>();
    List<Row> own = ownSpecies(problems);
    List<Row> others = rows("species", SpeciesRow.COLUMNS, problems);
    Map<String, Row> byCode = new LinkedHashMap<>();
    Stream.concat(others.stream(), own.stream()).forEach(r -> byCode.put(r.code(), r));
    own.forEach(
        row -> {
          List<Row> kept = byCode.values().stream().filter(r -> !own.contains(r)).toList();
          sameIn(NUMBER, "number", row, kept).ifPresent(problems::add);
          sameIn(NAME, "name", row, kept).ifPresent(problems::add);
        });
    List<Species> species =
        byCode.values().stream().map(r -> SpeciesRow.read(r.where(), r.cells(), problems)).toList();
    refuse(problems);
    return new SpeciesTable(species);
  }

  private List<Row> ownSpecies(List<String> problems) {
    return TextSource.isOwn(folder, OWN_SPECIES + ".tsv")
        ? rows(OWN_SPECIES, SpeciesRow.COLUMNS, problems)
        : List.of();
  }

  private static Optional<String> sameIn(int column, String what, Row row, List<Row> others) {
    String text = row.cells().get(column);
    return others.stream()
        .filter(other -> !text.isEmpty() && text.equalsIgnoreCase(other.cells().get(column)))
        .findFirst()
        .map(other -> row.where() + ": " + twice(what, text, other));
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

  private record Row(String where, List<String> cells) {

    String code() {
      return cells.get(0).toUpperCase(Locale.ROOT);
    }
  }

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
}
