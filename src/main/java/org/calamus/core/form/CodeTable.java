package org.calamus.core.form;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The codes that a field may hold.
 *
 * @param name the table's name, such as {@code age}
 * @param rows the codes in the order in which they are listed
 */
public record CodeTable(String name, List<Row> rows) {

  /** Copies the list. */
  public CodeTable {
    Objects.requireNonNull(name);
    rows = List.copyOf(rows);
  }

  /**
   * One code.
   *
   * @param code as stored, such as {@code AHY}
   * @param digits as struck on a keypad, such as {@code 1}; empty where it has none
   * @param words in words, such as {@code after hatching year}
   */
  public record Row(String code, String digits, String words) {}

  /** The row of a code, whatever its case. */
  public Optional<Row> byCode(String code) {
    return rows.stream().filter(r -> r.code().equalsIgnoreCase(code)).findFirst();
  }

  /** The row of a keypad number. */
  public Optional<Row> byDigits(String digits) {
    return rows.stream().filter(r -> !digits.isEmpty() && r.digits().equals(digits)).findFirst();
  }

  /** The words of a code; the code itself where the table does not have it. */
  public String words(String code) {
    return byCode(code).map(Row::words).orElse(code);
  }
}
