package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.form.SpeciesTable;
import org.calamus.port.SettingsException;
import org.calamus.port.Tables;

/**
 * The tables as text: a header of comments with the sources, one line of column names, then one row
 * a line, columns parted by tabs.
 */
public final class TableFiles implements Tables {

  private static final String RESOURCES = "/tables";
  private static final int SPECIES_COLUMNS = 9;
  private static final int CODE_COLUMNS = 3;

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

  private static void refuse(List<String> problems) {
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
  }

  private record Row(String where, List<String> cells) {}

  private List<Row> rows(String name, int columns, List<String> problems) {
    String file = name + ".tsv";
    List<String> lines = TextSource.lines(folder, RESOURCES, file);
    List<Row> rows = new ArrayList<>();
    boolean hasHeader = false;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      List<String> cells = List.of(line.split("\t", -1)).stream().map(String::strip).toList();
      String where = file + ":" + (i + 1);
      if (cells.size() != columns || cells.get(0).isEmpty()) {
        problems.add(
            where + ": " + cells.size() + " columns parted by tabs, and not " + columns + ".");
      } else if (hasHeader) {
        rows.add(new Row(where, cells));
      }
      hasHeader = true;
    }
    return rows;
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
