package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.form.BandSizes;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.EuringField;
import org.calamus.core.form.Species;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.record.FieldId;
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
  private static final TabTable.Shape SPECIES =
      new TabTable.Shape("code", List.of(SpeciesRow.COLUMNS), 1, 2);
  private static final TabTable.Shape SIZES = new TabTable.Shape("code", List.of(6), 1, 2);
  private static final TabTable.Shape EURING = new TabTable.Shape("name", List.of(5), -1, 2);
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
    List<TabTable.Row> own = ownSpecies(problems);
    List<TabTable.Row> others = rows("species", SPECIES, problems);
    Map<String, TabTable.Row> byCode = new LinkedHashMap<>();
    Stream.concat(others.stream(), own.stream()).forEach(r -> byCode.put(r.code(), r));
    own.forEach(
        row -> {
          List<TabTable.Row> kept = byCode.values().stream().filter(r -> !own.contains(r)).toList();
          sameIn(NUMBER, "number", row, kept).ifPresent(problems::add);
          sameIn(NAME, "name", row, kept).ifPresent(problems::add);
        });
    List<Species> species =
        byCode.values().stream().map(r -> SpeciesRow.read(r.where(), r.cells(), problems)).toList();
    refuse(problems);
    return new SpeciesTable(species);
  }

  private List<TabTable.Row> ownSpecies(List<String> problems) {
    return TextSource.isOwn(folder, OWN_SPECIES + ".tsv")
        ? rows(OWN_SPECIES, SPECIES, problems)
        : List.of();
  }

  private static Optional<String> sameIn(
      int column, String what, TabTable.Row row, List<TabTable.Row> others) {
    String text = row.cells().get(column);
    return others.stream()
        .filter(other -> !text.isEmpty() && text.equalsIgnoreCase(other.cells().get(column)))
        .findFirst()
        .map(other -> row.where() + ": " + TabTable.twice(what, text, other));
  }

  @Override
  public CodeTable codes(String name, CodeSet set) {
    if (name.equals(FieldId.BAND_SIZE.key()) || name.equals(FieldId.LEG_GAUGE.key())) {
      return bandSizes().codes();
    }
    List<String> problems = new ArrayList<>();
    TabTable rows = TabTable.read(folder, name, CodeRows.SHAPE, problems);
    CodeTable table = CodeRows.table(name, rows, costs(name, rows), set, problems);
    refuse(problems);
    return table;
  }

  /** A station's own table that does not know of costs must not take the questions away. */
  private Map<String, String> costs(String name, TabTable rows) {
    String file = name + ".tsv";
    boolean hidesOurs = TextSource.isOwn(folder, file) && TextSource.isOurs(RESOURCES, file);
    return CodeRows.hasCosts(rows) || !hidesOurs
        ? CodeRows.costs(rows)
        : CodeRows.costs(TabTable.read(Optional.empty(), name, CodeRows.SHAPE, new ArrayList<>()));
  }

  @Override
  public BandSizes bandSizes() {
    List<String> problems = new ArrayList<>();
    List<BandSizes.Size> sizes = new ArrayList<>();
    for (TabTable.Row row : rows(FieldId.BAND_SIZE.key(), SIZES, problems)) {
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
    for (TabTable.Row row : rows("euring-fields", EURING, problems)) {
      euringField(row, problems).ifPresent(fields::add);
    }
    refuse(problems);
    return List.copyOf(fields);
  }

  private List<TabTable.Row> rows(String name, TabTable.Shape shape, List<String> problems) {
    return TabTable.read(folder, name, shape, problems).rows();
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

  static List<String> cells(String line) {
    return Arrays.stream(line.split("\t", -1)).map(String::strip).toList();
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

  private static Optional<BigDecimal> number(TabTable.Row row, int column, List<String> problems) {
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
}
