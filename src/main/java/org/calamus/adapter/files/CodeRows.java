package org.calamus.adapter.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeSet;
import org.calamus.core.form.CodeTable;

/**
 * Makes the codes of a set of the rows of a code table. A table has the columns code, digits and
 * words, where the sets differ also laboratory, euring, euring digits and euring words, and where a
 * wrong code would cost much also cost.
 */
final class CodeRows {

  static final TabTable.Shape SHAPE = new TabTable.Shape("code", List.of(3, 7, 8), 1, 2);

  private static final int CODE = 0;
  private static final int DIGITS = 1;
  private static final int WORDS = 2;
  private static final int LABORATORY = 3;
  private static final int EURING = 4;
  private static final int EURING_DIGITS = 5;
  private static final int EURING_WORDS = 6;
  private static final int COST = 7;
  private static final int PLAIN_COLUMNS = 3;

  /** Stands where a set has the field but not the value. */
  private static final String NONE = "-";

  private CodeRows() {}

  /** Whether a table says which of its codes cost much; one that does not is of an older form. */
  static boolean hasCosts(TabTable table) {
    return table.columns() > COST;
  }

  /** What wrong codes would lead to, by code; none where the table does not say. */
  static Map<String, String> costs(TabTable table) {
    return hasCosts(table)
        ? table.rows().stream().collect(Collectors.toMap(TabTable.Row::code, r -> r.cell(COST)))
        : Map.of();
  }

  static CodeTable table(
      String name, TabTable table, Map<String, String> costs, CodeSet set, List<String> problems) {
    Map<TabTable.Row, CodeTable.Row> kept = new LinkedHashMap<>();
    Set<String> elsewhere = new LinkedHashSet<>();
    for (TabTable.Row row : table.rows()) {
      CodeTable.Row named = table.columns() > PLAIN_COLUMNS ? row(row, set) : plain(row);
      CodeTable.Row made = named.withCost(costs.getOrDefault(row.code(), ""));
      if (made.own().equals(NONE)) {
        elsewhere.add(made.code());
      } else {
        kept.put(row, made);
      }
    }
    if (set != CodeSet.LABORATORY) {
      numbersTwice(kept, problems);
    }
    return new CodeTable(name, List.copyOf(kept.values()), elsewhere);
  }

  private static CodeTable.Row plain(TabTable.Row row) {
    return new CodeTable.Row(row.cell(CODE), row.cell(DIGITS), row.cell(WORDS));
  }

  private static CodeTable.Row row(TabTable.Row row, CodeSet set) {
    return set == CodeSet.LABORATORY
        ? new CodeTable.Row(row.cell(CODE), row.cell(LABORATORY), row.cell(DIGITS), row.cell(WORDS))
        : new CodeTable.Row(
            row.cell(CODE),
            row.cell(EURING),
            firstFilled(row, EURING_DIGITS, DIGITS),
            firstFilled(row, EURING_WORDS, WORDS));
  }

  private static String firstFilled(TabTable.Row row, int column, int other) {
    return row.cell(column).isEmpty() ? row.cell(other) : row.cell(column);
  }

  /** The numbers of the first column of digits are looked at as the table is read. */
  private static void numbersTwice(Map<TabTable.Row, CodeTable.Row> kept, List<String> problems) {
    List<TabTable.Row> before = new ArrayList<>();
    kept.forEach(
        (row, made) -> {
          before.stream()
              .flatMap(
                  other ->
                      TabTable.sameNumber(row, made.digits(), other, kept.get(other).digits())
                          .stream())
              .findFirst()
              .ifPresent(p -> problems.add(row.where() + ": " + p));
          before.add(row);
        });
  }
}
