package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;

/** Looks whether a vocabulary fits a form. */
public final class VocabularyCheck {

  private VocabularyCheck() {}

  /**
   * One sentence, beginning with file and line, for each form whose code no table has. Codes of
   * fields that the form does not have are left alone, and so are those of another code set.
   */
  public static List<String> problems(Vocabulary vocabulary, Form form) {
    List<String> problems = new ArrayList<>();
    for (SpokenForm spoken : vocabulary.forms()) {
      Optional<Token.CodeWords> words = code(spoken.meaning());
      words.flatMap(w -> problem(w, form)).ifPresent(p -> problems.add(spoken.where() + ": " + p));
    }
    return problems;
  }

  private static Optional<Token.CodeWords> code(Token meaning) {
    if (meaning instanceof Token.NameOrCode both) {
      return Optional.of(both.words());
    }
    return meaning instanceof Token.CodeWords words ? Optional.of(words) : Optional.empty();
  }

  private static Optional<String> problem(Token.CodeWords words, Form form) {
    if (words.fields().isEmpty()) {
      return isInAny(words, form.fields()) ? Optional.empty() : Optional.of(missing(words, "any"));
    }
    for (FieldId field : words.fields()) {
      Optional<FieldSpec> spec = Optional.of(field).filter(form::has).map(form::spec);
      if (spec.isPresent() && Within.table(spec.get()).isEmpty()) {
        return Optional.of("the field has no codes; correct the line.");
      }
      if (spec.isPresent() && !isInAny(words, List.of(spec.get()))) {
        return Optional.of(missing(words, "the " + spec.get().spoken()));
      }
    }
    return Optional.empty();
  }

  private static boolean isInAny(Token.CodeWords words, List<FieldSpec> fields) {
    return fields.stream()
        .flatMap(f -> Within.table(f).stream())
        .anyMatch(t -> isIn(words.code(), t));
  }

  private static boolean isIn(String code, CodeTable table) {
    return table.byCode(code).isPresent() || table.elsewhere().contains(code);
  }

  private static String missing(Token.CodeWords words, String table) {
    return "there is no code "
        + words.code()
        + " in "
        + table
        + " table; correct the line or add the code.";
  }
}
