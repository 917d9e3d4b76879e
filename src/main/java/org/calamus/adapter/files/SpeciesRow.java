package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.calamus.core.form.BySex;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.record.FieldId;

/** A row of the species table. An empty cell is something that is not known. */
final class SpeciesRow {

  /** How many columns a row has. */
  static final int COLUMNS = 18;

  private static final int CODE = 0;
  private static final int NUMBER = 1;
  private static final int NAME = 2;
  private static final int SCIENTIFIC = 3;
  private static final int BAND_SIZES = 4;
  private static final int WING = 5;
  private static final int WING_FEMALE = 6;
  private static final int WING_MALE = 7;
  private static final int TAIL = 8;
  private static final int TARSUS = 9;
  private static final int CULMEN = 10;
  private static final int MASS = 11;
  private static final int MASS_FEMALE = 12;
  private static final int MASS_MALE = 13;
  private static final int PLUMAGE = 14;
  private static final int BROOD_PATCH = 15;
  private static final int SOURCES = 16;
  private static final int NOTES = 17;

  private static final String ONLY = " only";
  private static final Pattern RANGE = Pattern.compile("(\\d+(?:\\.\\d+)?)-(\\d+(?:\\.\\d+)?)");
  private static final Pattern SIZE = Pattern.compile("[0-9A-Z]{1,3}");

  private final String where;
  private final List<String> cells;
  private final List<String> problems;

  private SpeciesRow(String where, List<String> cells, List<String> problems) {
    this.where = where;
    this.cells = cells;
    this.problems = problems;
  }

  /**
   * Reads a row.
   *
   * @param where the file and line, for the problems
   * @param cells as many as {@link #COLUMNS}
   * @param problems takes a sentence for each cell that cannot be read
   */
  static Species read(String where, List<String> cells, List<String> problems) {
    return new SpeciesRow(where, cells, problems).species();
  }

  private Species species() {
    String sizes = cells.get(BAND_SIZES);
    boolean isOnly = sizes.endsWith(ONLY);
    return new Species(
        cells.get(CODE),
        cells.get(NUMBER),
        cells.get(NAME),
        cells.get(SCIENTIFIC),
        bandSizes(isOnly ? sizes.substring(0, sizes.length() - ONLY.length()) : sizes),
        isOnly,
        ranges(),
        choice(PLUMAGE, "plumage", Species.Plumage.values(), Species.Plumage.UNKNOWN),
        choice(BROOD_PATCH, "brood patch", Species.BroodPatch.values(), Species.BroodPatch.UNKNOWN),
        cells.get(SOURCES),
        cells.get(NOTES));
  }

  /** Sizes for both sexes, {@code 1B, 1}, or for each, {@code F 1A; M 2, 1A}. */
  private BySex<List<String>> bandSizes(String text) {
    if (text.isEmpty()) {
      return BySex.unknown();
    }
    Map<String, List<String>> own = new LinkedHashMap<>();
    for (String part : text.split(";", -1)) {
      String sizes = part.strip();
      boolean isOfOneSex = sizes.startsWith("F ") || sizes.startsWith("M ");
      String sex = isOfOneSex ? sizes.substring(0, 1) : "";
      List<String> list =
          Arrays.stream(sizes.substring(isOfOneSex ? 2 : 0).split(",", -1))
              .map(String::strip)
              .toList();
      if (!list.stream().allMatch(s -> SIZE.matcher(s).matches()) || own.put(sex, list) != null) {
        return noSizes(text);
      }
    }
    List<String> whole =
        List.copyOf(new LinkedHashSet<>(own.values().stream().flatMap(List::stream).toList()));
    boolean isForBoth = own.remove("") != null;
    return isForBoth && !own.isEmpty() ? noSizes(text) : new BySex<>(Optional.of(whole), own);
  }

  private BySex<List<String>> noSizes(String text) {
    problems.add(
        where
            + ": \""
            + text
            + "\" are no band sizes; give them as in \"1B, 1\", \"0A only\" or \"F 1A; M 2\".");
    return BySex.unknown();
  }

  private Map<FieldId, BySex<Range>> ranges() {
    Map<FieldId, BySex<Range>> ranges = new EnumMap<>(FieldId.class);
    ranges.put(FieldId.WING, bySex(WING, WING_FEMALE, WING_MALE));
    ranges.put(FieldId.TAIL, new BySex<>(range(TAIL), Map.of()));
    ranges.put(FieldId.TARSUS, new BySex<>(range(TARSUS), Map.of()));
    ranges.put(FieldId.CULMEN, new BySex<>(range(CULMEN), Map.of()));
    ranges.put(FieldId.MASS, bySex(MASS, MASS_FEMALE, MASS_MALE));
    return ranges;
  }

  private BySex<Range> bySex(int whole, int female, int male) {
    Map<String, Range> own = new LinkedHashMap<>();
    range(female).ifPresent(r -> own.put("F", r));
    range(male).ifPresent(r -> own.put("M", r));
    return new BySex<>(range(whole), own);
  }

  private Optional<Range> range(int column) {
    String text = cells.get(column);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Matcher ends = RANGE.matcher(text);
    if (ends.matches()) {
      BigDecimal least = new BigDecimal(ends.group(1));
      BigDecimal most = new BigDecimal(ends.group(2));
      if (least.compareTo(most) <= 0) {
        return Optional.of(new Range(least, most));
      }
    }
    problems.add(
        where
            + ": \""
            + text
            + "\" is no range; give the lower and the upper end as in \"77-100\", or nothing.");
    return Optional.empty();
  }

  /** The value whose name, in small letters with blanks, stands in the cell. */
  private <E extends Enum<E>> E choice(int column, String what, E[] values, E unknown) {
    String text = cells.get(column);
    if (text.isEmpty()) {
      return unknown;
    }
    Optional<E> chosen = Arrays.stream(values).filter(v -> words(v).equals(text)).findFirst();
    if (chosen.isEmpty()) {
      String known =
          String.join(
              ", ", Stream.of(values).filter(v -> v != unknown).map(SpeciesRow::words).toList());
      problems.add(
          where + ": \"" + text + "\" is no " + what + "; give one of " + known + ", or nothing.");
    }
    return chosen.orElse(unknown);
  }

  private static String words(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
