package org.calamus.adapter.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.calamus.core.rule.AgeClasses;
import org.calamus.core.rule.AgeSeason;
import org.calamus.core.rule.BandLetters;
import org.calamus.port.SettingsException;

/** The tables of what codes mean: birth years of ages, ages by date, letters of bands. */
final class RuleTables {

  private static final int MONTHS = 12;
  private static final String NUMBER = "-?\\d{1,3}";

  private final Optional<Path> folder;

  RuleTables(Optional<Path> folder) {
    this.folder = folder;
  }

  private record Row(String where, List<String> cells) {
    String code() {
      return cells.get(0);
    }
  }

  AgeClasses classes() {
    List<String> problems = new ArrayList<>();
    List<AgeClasses.Row> classes = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Row row : rows("age-years", 3, problems)) {
      String earliest = row.cells().get(1);
      String latest = row.cells().get(2);
      if (!latest.matches(NUMBER) || !earliest.equals("-") && !earliest.matches(NUMBER)) {
        problems.add(row.where() + ": the offsets are whole numbers, or \"-\" for the earliest.");
      } else if (!seen.add(row.code())) {
        problems.add(row.where() + ": the code " + row.code() + " stands there twice.");
      } else {
        addClass(row, earliest, Integer.parseInt(latest), classes, problems);
      }
    }
    refuse(problems);
    return new AgeClasses(classes);
  }

  private static void addClass(
      Row row, String earliest, int latest, List<AgeClasses.Row> classes, List<String> problems) {
    OptionalInt first =
        earliest.equals("-") ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(earliest));
    if (latest > 0 || first.isPresent() && first.getAsInt() > latest) {
      problems.add(row.where() + ": the earliest is above the latest, or the latest above 0.");
    } else {
      classes.add(new AgeClasses.Row(row.code(), first, latest));
    }
  }

  AgeSeason season() {
    List<String> problems = new ArrayList<>();
    List<AgeSeason.Row> rows = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Row row : rows("age-dates", 2 + MONTHS, problems)) {
      String species = row.cells().get(1);
      Set<String> of = species.isEmpty() ? Set.of() : Set.copyOf(List.of(species.split(" +")));
      for (String one : of.isEmpty() ? Set.of("") : of) {
        if (!seen.add(row.code() + " " + one)) {
          problems.add(
              row.where() + ": " + (row.code() + " " + one).strip() + " stands there twice.");
        }
      }
      halves(row, problems)
          .ifPresent(halves -> rows.add(new AgeSeason.Row(row.code(), of, halves)));
    }
    refuse(problems);
    return new AgeSeason(rows);
  }

  private static Optional<List<AgeSeason.Verdict>> halves(Row row, List<String> problems) {
    List<AgeSeason.Verdict> halves = new ArrayList<>();
    for (String cell : row.cells().subList(2, 2 + MONTHS)) {
      List<String> words = List.of(cell.split("/", -1));
      List<AgeSeason.Verdict> verdicts = words.stream().flatMap(w -> verdict(w).stream()).toList();
      if (words.size() > 2 || verdicts.size() != words.size()) {
        problems.add(
            row.where()
                + ": \""
                + cell
                + "\" is not ok, asks or refused, or two of them parted by \"/\".");
        return Optional.empty();
      }
      halves.add(verdicts.get(0));
      halves.add(verdicts.get(verdicts.size() - 1));
    }
    return Optional.of(halves);
  }

  private static Optional<AgeSeason.Verdict> verdict(String word) {
    return Arrays.stream(AgeSeason.Verdict.values())
        .filter(v -> v.name().toLowerCase(Locale.ROOT).equals(word))
        .findFirst();
  }

  BandLetters letters() {
    List<String> problems = new ArrayList<>();
    Map<String, String> prefixes = new HashMap<>();
    for (Row row : rows("band-letters", 2, problems)) {
      String prefix = row.cells().get(1);
      if (!row.code().matches("[A-Z]") || !prefix.matches("\\d{4}")) {
        problems.add(row.where() + ": a row is one capital letter and four digits.");
      } else if (prefixes.put(row.code(), prefix) != null) {
        problems.add(row.where() + ": the letter " + row.code() + " stands there twice.");
      }
    }
    refuse(problems);
    return new BandLetters(prefixes);
  }

  private List<Row> rows(String name, int columns, List<String> problems) {
    String file = name + ".tsv";
    String shown = TextSource.shown(folder, "tables", file);
    List<String> lines = TextSource.lines(folder, TableFiles.RESOURCES, file);
    List<Row> rows = new ArrayList<>();
    boolean hasHeader = false;
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).isBlank() || lines.get(i).startsWith("#")) {
        continue;
      }
      Row row = new Row(shown + ":" + (i + 1), TableFiles.cells(lines.get(i)));
      if (row.cells().size() != columns || !hasHeader && !row.code().equals("code")) {
        problems.add(
            row.where()
                + ": a line has "
                + columns
                + " columns parted by tabs, and the first names them and begins with \"code\".");
      } else if (row.code().isEmpty()) {
        problems.add(row.where() + ": a row needs a code.");
      } else if (hasHeader) {
        rows.add(row);
      }
      hasHeader = true;
    }
    if (rows.isEmpty() && problems.isEmpty()) {
      problems.add(shown + ": the table has no row; add one, or take the file away.");
    }
    return rows;
  }

  private static void refuse(List<String> problems) {
    if (!problems.isEmpty()) {
      throw new SettingsException(problems);
    }
  }
}
