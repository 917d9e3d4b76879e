package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Supplier;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a TOML file, read key by key. What is missing or wrong is noted with its place and
 * answered with a stand-in, so that one reading finds all mistakes. Used from one thread.
 */
final class TomlSection {

  private final String file;
  private final String name;
  private final TomlTable table;
  private final TomlPosition position;
  private final List<String> mistakes;

  private TomlSection(
      String file, String name, TomlTable table, TomlPosition position, List<String> mistakes) {
    this.file = file;
    this.name = name;
    this.table = table;
    this.position = position;
    this.mistakes = mistakes;
  }

  /** The whole file. */
  static TomlSection root(String file, TomlTable table, List<String> mistakes) {
    return new TomlSection(file, "the file", table, TomlPosition.positionAt(1, 1), mistakes);
  }

  /** A sentence with its place before it. */
  static String at(String file, TomlPosition position, String sentence) {
    return file + ":" + position.line() + ":" + position.column() + ": " + sentence;
  }

  /** Notes a mistake of the table as a whole. */
  void mistake(String sentence) {
    mistakes.add(at(file, position, sentence));
  }

  /** Notes a mistake of the value of a key. */
  void mistake(String key, String sentence) {
    Optional<TomlPosition> place = Optional.ofNullable(table.inputPositionOf(List.of(key)));
    mistakes.add(at(file, place.orElse(position), sentence));
  }

  boolean has(String key) {
    return table.contains(List.of(key));
  }

  /** The table of that name, or an empty one, which is a mistake only if a key of it is needed. */
  TomlSection section(String key) {
    if (has(key) && !table.isTable(List.of(key))) {
      mistake(key, "\"" + key + "\" must be a table, written [" + key + "].");
    }
    boolean isThere = table.isTable(List.of(key));
    return new TomlSection(
        file,
        "[" + key + "]",
        isThere ? table.getTable(List.of(key)) : Toml.parse(""),
        isThere ? table.inputPositionOf(List.of(key)) : position,
        mistakes);
  }

  /** The tables that are written {@code [[key]]}, in order. */
  List<TomlSection> sections(String key) {
    List<TomlSection> sections = new ArrayList<>();
    if (!has(key)) {
      return sections;
    }
    if (!table.isArray(List.of(key)) || !holdsTables(table.getArray(List.of(key)))) {
      mistake(key, "\"" + key + "\" must be written as tables, each headed [[" + key + "]].");
      return sections;
    }
    TomlArray array = table.getArray(List.of(key));
    for (int i = 0; i < array.size(); i++) {
      sections.add(
          new TomlSection(
              file, "[[" + key + "]]", array.getTable(i), array.inputPositionOf(i), mistakes));
    }
    return sections;
  }

  /** A text that must be there. */
  String text(String key) {
    if (!has(key)) {
      mistake("In " + name + " the key \"" + key + "\" is missing.");
      return "";
    }
    return textOr(key, "");
  }

  /** A text, or the given one where the key is missing. */
  String textOr(String key, String otherwise) {
    if (!has(key)) {
      return otherwise;
    }
    if (!table.isString(List.of(key))) {
      mistake(key, "\"" + key + "\" must be a text in quotation marks.");
      return otherwise;
    }
    return table.getString(List.of(key));
  }

  /** True or false; false where the key is missing. */
  boolean truth(String key) {
    if (has(key) && !table.isBoolean(List.of(key))) {
      mistake(key, "\"" + key + "\" must be true or false, without quotation marks.");
      return false;
    }
    return has(key) && table.getBoolean(List.of(key));
  }

  /** A list of texts, none blank; empty where the key is missing. */
  List<String> words(String key) {
    if (!has(key)) {
      return List.of();
    }
    Object value = table.get(List.of(key));
    List<String> words = new ArrayList<>();
    if (value instanceof TomlArray list) {
      list.toList().stream()
          .filter(word -> word instanceof String s && !s.isBlank())
          .forEach(word -> words.add(((String) word).strip()));
      if (words.size() == list.size()) {
        return words;
      }
    }
    mistake(key, "\"" + key + "\" must be a list of texts, such as ['1', '2'].");
    return List.of();
  }

  /** A whole number within limits that must be there. */
  int whole(String key, int least, int most) {
    if (!has(key)) {
      mistake("In " + name + " the key \"" + key + "\" is missing.");
      return least;
    }
    return wholeOr(key, least, most, least);
  }

  /** A whole number within limits, or the given one where the key is missing. */
  int wholeOr(String key, int least, int most, int otherwise) {
    if (!has(key)) {
      return otherwise;
    }
    if (table.isLong(List.of(key))) {
      long value = table.getLong(List.of(key));
      if (value >= least && value <= most) {
        return (int) value;
      }
    }
    mistake(key, "\"" + key + "\" must be a whole number from " + least + " to " + most + ".");
    return otherwise;
  }

  /**
   * A decimal number, or the given one where the key is missing. It is written in quotation marks,
   * since a TOML fraction is a binary one and would not keep its digits.
   */
  BigDecimal decimalOr(String key, BigDecimal otherwise) {
    String text = textOr(key, otherwise.toPlainString());
    if (!text.matches("[0-9]{1,9}(\\.[0-9]{1,9})?")) {
      mistake(key, "\"" + key + "\" must be a number in quotation marks, such as '0.3'.");
      return otherwise;
    }
    return new BigDecimal(text);
  }

  /** One of some words, or the given one where the key is missing. */
  <T> T choiceOr(String key, Map<String, T> words, T otherwise) {
    if (!has(key)) {
      return otherwise;
    }
    return word(key, words).orElse(otherwise);
  }

  /** One of some words that must be there. */
  <T> T choice(String key, Map<String, T> words) {
    if (!has(key)) {
      mistake("In " + name + " the key \"" + key + "\" is missing.");
    }
    T standIn = words.values().iterator().next();
    return choiceOr(key, words, standIn);
  }

  /** Every key of the table with one of some words as its value. */
  <T> Map<String, T> choices(Map<String, T> words) {
    Map<String, T> chosen = new LinkedHashMap<>();
    for (String key : table.keySet()) {
      word(key, words).ifPresent(value -> chosen.put(key, value));
    }
    return chosen;
  }

  /** Every key of the table with a text as its value. */
  Map<String, String> texts() {
    Map<String, String> texts = new LinkedHashMap<>();
    for (String key : table.keySet()) {
      texts.put(key, textOr(key, ""));
    }
    return texts;
  }

  /** Notes every key that is not one of these: it is a slip of the pen and would do nothing. */
  void allowOnly(Set<String> keys) {
    for (String key : table.keySet()) {
      if (!keys.contains(key)) {
        mistake(
            key,
            "The key \""
                + key
                + "\" is unknown in "
                + name
                + "; known are "
                + String.join(", ", new TreeSet<>(keys))
                + ".");
      }
    }
  }

  private <T> Optional<T> word(String key, Map<String, T> words) {
    String text = textOr(key, "");
    Optional<T> value = Optional.ofNullable(words.get(text));
    if (value.isEmpty()) {
      mistake(
          key,
          "\""
              + key
              + "\" must be one of "
              + String.join(", ", new TreeSet<>(words.keySet()))
              + ".");
    }
    return value;
  }

  /** Makes a core value; what it refuses is a mistake of this table. */
  <T> Optional<T> make(Supplier<? extends T> maker) {
    try {
      return Optional.of(maker.get());
    } catch (IllegalArgumentException e) {
      mistake("This does not go together: " + e.getMessage() + ".");
      return Optional.empty();
    }
  }

  /** The constants of an enumeration by the words that files use for them. */
  static <T extends Enum<T>> Map<String, T> ordered(List<T> values) {
    return named(values, value -> value.name().toLowerCase(Locale.ROOT).replace('_', ' '));
  }

  /** Values by their names, in order. */
  static <T> Map<String, T> named(List<T> values, Function<T, String> name) {
    Map<String, T> words = new LinkedHashMap<>();
    values.forEach(value -> words.put(name.apply(value), value));
    return words;
  }

  private static boolean holdsTables(TomlArray array) {
    return array.toList().stream().allMatch(TomlTable.class::isInstance);
  }
}
