package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;

/** Makes codes of spoken tokens or of struck keys. */
final class CodeReader {

  private CodeReader() {}

  /** One code: in words, by its keypad number, or spelled with digits and letters. */
  static Heard one(FieldId field, List<Token> tokens, CodeTable table) {
    if (tokens.size() == 1 && tokens.get(0) instanceof Token.CodeWords words) {
      return listed(inWords(field, words, table), table);
    }
    Optional<String> text = text(tokens);
    if (text.isEmpty()) {
      boolean isNumber = table.isNumbered() && tokens.stream().allMatch(CodeReader::isNumber);
      return isNumber
          ? SpokenNumber.code(tokens, number -> value(table.byDigits(number)))
          : new Heard.No("not one " + table.name());
    }
    return listed(table.byDigits(text.get()).or(() -> table.byText(text.get())), table);
  }

  /** Several codes, each in words or spelled; or one by its keypad number. */
  static Heard many(FieldId field, List<Token> tokens, FieldKind.CodedMany kind) {
    CodeTable table = kind.table();
    List<Optional<CodeTable.Row>> rows = new ArrayList<>();
    int at = 0;
    while (at < tokens.size()) {
      if (tokens.get(at) instanceof Token.CodeWords words) {
        rows.add(inWords(field, words, table));
        at++;
        continue;
      }
      int end = at;
      while (end < tokens.size() && text(tokens.subList(at, end + 1)).isPresent()) {
        end++;
      }
      if (end == at) {
        return new Heard.No("not one " + table.name());
      }
      rows.addAll(spelled(text(tokens.subList(at, end)).orElseThrow(), table));
      at = end;
    }
    return several(rows, kind);
  }

  private static Optional<CodeTable.Row> inWords(
      FieldId field, Token.CodeWords words, CodeTable table) {
    boolean isOurs = words.fields().isEmpty() || words.fields().contains(field);
    return isOurs
        ? table.byCode(words.code()).or(() -> table.byDigits(words.code()))
        : Optional.empty();
  }

  /** The digits and letters of tokens that are nothing else, as one text. */
  private static Optional<String> text(List<Token> tokens) {
    StringBuilder text = new StringBuilder();
    for (Token token : tokens) {
      if (token instanceof Token.Digit digit) {
        text.append(digit.value());
      } else if (token instanceof Token.Letter letter) {
        text.append(letter.letter());
      } else {
        return Optional.empty();
      }
    }
    return Optional.of(text.toString());
  }

  /** The codes that a text is made of, the longest first; one empty entry for what is none. */
  private static List<Optional<CodeTable.Row>> spelled(String text, CodeTable table) {
    Optional<CodeTable.Row> number = table.byDigits(text);
    if (number.isPresent()) {
      return List.of(number);
    }
    List<Optional<CodeTable.Row>> rows = new ArrayList<>();
    String rest = text;
    while (!rest.isEmpty()) {
      int length = rest.length();
      while (length > 0 && table.byText(rest.substring(0, length)).isEmpty()) {
        length--;
      }
      if (length == 0) {
        rows.add(Optional.empty());
        return rows;
      }
      rows.add(table.byText(rest.substring(0, length)));
      rest = rest.substring(length);
    }
    return rows;
  }

  /** One code of struck keys: its number, the set's own code or ours. */
  static Heard keyed(String keys, CodeTable table) {
    return struck(keys, table)
        .<Heard>map(r -> new Heard.One(new FieldValue.Code(r.code())))
        .orElse(new Heard.No(keys + notIn(table)));
  }

  /** What a code is not, in words that need no knowledge of how the tables are called in files. */
  private static String notIn(CodeTable table) {
    return " is not in the list for " + table.name().replace('-', ' ');
  }

  /** Several codes of struck keys, parted by points. */
  static Heard keyed(String keys, FieldKind.CodedMany kind) {
    List<Optional<CodeTable.Row>> rows = new ArrayList<>();
    for (String part : keys.split("\\.", -1)) {
      Optional<CodeTable.Row> row = struck(part, kind.table());
      if (row.isEmpty()) {
        return new Heard.No(
            part.isEmpty() ? "a point wants a number on both sides" : part + notIn(kind.table()));
      }
      rows.add(row);
    }
    return several(rows, kind);
  }

  private static Optional<CodeTable.Row> struck(String keys, CodeTable table) {
    return table.byDigits(keys).or(() -> table.byText(keys).filter(r -> !keys.isEmpty()));
  }

  private static Heard several(List<Optional<CodeTable.Row>> rows, FieldKind.CodedMany kind) {
    String name = kind.table().name();
    if (rows.stream().anyMatch(Optional::isEmpty)) {
      return new Heard.No("one of them is not in the " + name + " table");
    }
    List<String> codes = rows.stream().map(r -> r.orElseThrow().code()).toList();
    if (codes.stream().distinct().count() != codes.size()) {
      return new Heard.No("one of them stands twice");
    }
    return codes.size() > kind.most()
        ? new Heard.No("no more than " + kind.most() + " of them")
        : new Heard.One(new FieldValue.Codes(codes));
  }

  private static boolean isNumber(Token token) {
    return token instanceof Token.Digit
        || token instanceof Token.Teen
        || token instanceof Token.Tens
        || token instanceof Token.Hundred
        || token instanceof Token.HundredAnd;
  }

  private static Optional<FieldValue> value(Optional<CodeTable.Row> row) {
    return row.map(r -> new FieldValue.Code(r.code()));
  }

  private static Heard listed(Optional<CodeTable.Row> row, CodeTable table) {
    return row.<Heard>map(r -> new Heard.One(new FieldValue.Code(r.code())))
        .orElse(new Heard.No("that is not in the " + table.name() + " table"));
  }
}
