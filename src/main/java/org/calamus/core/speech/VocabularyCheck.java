package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;

/** Looks whether a vocabulary fits a form. */
public final class VocabularyCheck {

  private VocabularyCheck() {}

  /** One sentence, beginning with file and line, for each form whose code no table has. */
  public static List<String> problems(Vocabulary vocabulary, Form form) {
    List<String> problems = new ArrayList<>();
    for (SpokenForm spoken : vocabulary.forms()) {
      if (spoken.meaning() instanceof Token.CodeWords words) {
        problem(words, form).ifPresent(p -> problems.add(spoken.where() + ": " + p));
      }
    }
    return problems;
  }

  private static Optional<String> problem(Token.CodeWords words, Form form) {
    List<FieldSpec> fields =
        form.fields().stream()
            .filter(f -> words.field().map(f.id()::equals).orElse(true))
            .filter(f -> f.kind() instanceof FieldKind.Coded)
            .toList();
    if (fields.isEmpty()) {
      return Optional.of("the field has no codes; correct the line.");
    }
    boolean isListed =
        fields.stream()
            .anyMatch(
                f ->
                    f.kind() instanceof FieldKind.Coded coded
                        && coded.table().byCode(words.code()).isPresent());
    String table = words.field().isPresent() ? "the " + fields.get(0).spoken() : "any";
    return isListed
        ? Optional.empty()
        : Optional.of(
            "there is no code "
                + words.code()
                + " in "
                + table
                + " table; correct the line or add the code.");
  }
}
