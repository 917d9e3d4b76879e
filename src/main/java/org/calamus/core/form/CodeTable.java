package org.calamus.core.form;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The codes that a field may hold, as the station's code set has them. What is stored is always the
 * code of our own; the set says what it is called on the screen and in what is handed in.
 *
 * @param name the table's name, such as {@code age}
 * @param rows the codes in the order in which they are listed
 * @param elsewhere codes of our own that only another set has: nobody can give them here
 */
public record CodeTable(String name, List<Row> rows, Set<String> elsewhere) {

  /** Copies the lists. */
  public CodeTable {
    Objects.requireNonNull(name);
    rows = List.copyOf(rows);
    elsewhere = Set.copyOf(elsewhere);
  }

  /** A table that is the same in every set. */
  public CodeTable(String name, List<Row> rows) {
    this(name, rows, Set.of());
  }

  /**
   * One code.
   *
   * @param code as stored, such as {@code AHY}
   * @param own as the chosen set has it, such as {@code 4}; empty where the set has no such field
   * @param digits as struck on a keypad, such as {@code 1}; empty where it has none
   * @param words in words, such as {@code after hatching year}
   * @param cost what it would lead to if it were wrong, where that is worth a question, such as
   *     {@code the bird would be reported dead}; empty where it is only read back
   */
  public record Row(String code, String own, String digits, String words, String cost) {

    /** A code that is only read back. */
    public Row(String code, String own, String digits, String words) {
      this(code, own, digits, words, "");
    }

    /** A code that no set has: it is shown as it is stored. */
    public Row(String code, String digits, String words) {
      this(code, "", digits, words);
    }

    /** The code as it is shown: the set's own, or else ours. */
    public String shown() {
      return own.isEmpty() ? code : own;
    }

    /** The same code with what it would lead to if it were wrong; may be empty. */
    public Row withCost(String cost) {
      return new Row(code, own, digits, words, cost);
    }

    /** Whether the code is a number, such as a score. */
    public boolean isNumber() {
      return code.matches("\\d+");
    }
  }

  /** The row of a code of ours, whatever its case. */
  public Optional<Row> byCode(String code) {
    return first(r -> r.code().equalsIgnoreCase(code));
  }

  /** The row of a keypad number. */
  public Optional<Row> byDigits(String digits) {
    return first(r -> !digits.isEmpty() && r.digits().equals(digits));
  }

  /** The row of what somebody typed or spelled: the set's own code, or else ours. */
  public Optional<Row> byText(String text) {
    return first(r -> r.own().equalsIgnoreCase(text)).or(() -> byCode(text));
  }

  /** The set's own code for a code of ours; empty where the set has none. */
  public Optional<String> inSet(String code) {
    return byCode(code).map(Row::own).filter(own -> !own.isEmpty());
  }

  /** Our code for a code of the set's; the first where the set has one code for several of ours. */
  public Optional<String> ofSet(String own) {
    return first(r -> !own.isEmpty() && r.own().equals(own)).map(Row::code);
  }

  /** The words of a code; the code itself where the table does not have it. */
  public String words(String code) {
    return byCode(code).map(Row::words).orElse(code);
  }

  /** A code of ours as it is shown. */
  public String shown(String code) {
    return byCode(code).map(Row::shown).orElse(code);
  }

  /** Whether codes of the table are numbers, which are said digit by digit and not in words. */
  public boolean isNumbered() {
    return rows.stream().anyMatch(Row::isNumber);
  }

  private Optional<Row> first(Predicate<Row> fits) {
    return rows.stream().filter(fits).findFirst();
  }
}
