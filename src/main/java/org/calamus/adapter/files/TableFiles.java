package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.BandSizes;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.EuringField;
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

  private static final TabTable.Shape SPECIES = new TabTable.Shape("code", List.of(9), 1, 2);
  private static final TabTable.Shape SIZES = new TabTable.Shape("code", List.of(6), 1, 2);
  private static final TabTable.Shape EURING = new TabTable.Shape("name", List.of(5), -1, 2);
  private static final String SIZE_TABLE = "band-size";

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
    for (TabTable.Row row : TabTable.read(folder, "species", SPECIES, problems).rows()) {
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
  public CodeTable codes(String name, CodeSet set) {
    if (name.equals(SIZE_TABLE)) {
      return bandSizes().codes();
    }
    List<String> problems = new ArrayList<>();
    TabTable rows = TabTable.read(folder, name, CodeRows.SHAPE, problems);
    CodeTable table = CodeRows.table(name, rows, set, problems);
    refuse(problems);
    return table;
  }

  @Override
  public BandSizes bandSizes() {
    List<String> problems = new ArrayList<>();
    List<BandSizes.Size> sizes = new ArrayList<>();
    for (TabTable.Row row : TabTable.read(folder, SIZE_TABLE, SIZES, problems).rows()) {
      sizes.add(
          new BandSizes.Size(
              row.cell(0),
              row.cell(1),
              row.cell(2),
              number(row, 3, problems),
              number(row, 4, problems),
              Arrays.stream(row.cell(5).split(";")).map(String::strip).toList()));
    }
    refuse(problems);
    return new BandSizes(sizes);
  }

  @Override
  public List<EuringField> euringFields() {
    List<String> problems = new ArrayList<>();
    List<EuringField> fields = new ArrayList<>();
    for (TabTable.Row row : TabTable.read(folder, "euring-fields", EURING, problems).rows()) {
      euringField(row, problems).ifPresent(fields::add);
    }
    refuse(problems);
    return List.copyOf(fields);
  }

  private static Optional<EuringField> euringField(TabTable.Row row, List<String> problems) {
    Optional<EuringField.Kind> kind = EuringField.Kind.named(row.cell(2));
    if (kind.isEmpty() || !row.cell(1).matches("\\d{1,2}")) {
      problems.add(row.where() + ": a field has a length in digits and a kind; see the header.");
      return Optional.empty();
    }
    return Optional.of(
        new EuringField(
            row.cell(0),
            Integer.parseInt(row.cell(1)),
            kind.get(),
            number(row, 3, problems),
            row.cell(4)));
  }

  private static void refuse(List<String> problems) {
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
  }

  private static Optional<BigDecimal> number(
      TabTable.Row row, int column, List<String> problems) {
    String text = row.cell(column);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (!text.matches("\\d+(\\.\\d+)?")) {
      problems.add(row.where() + ": \"" + text + "\" is no number; write it as 0.109.");
      return Optional.empty();
    }
    return Optional.of(new BigDecimal(text));
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
