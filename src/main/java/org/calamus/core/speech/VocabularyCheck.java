package org.calamus.core.speech;

import java.util.ArrayList;
import java.util.List;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.Form;

/** Looks whether a vocabulary fits a form. */
public final class VocabularyCheck {

  private VocabularyCheck() {}

  /** One sentence, beginning with file and line, for each form whose code no table has. */
  public static List<String> problems(Vocabulary vocabulary, Form form) {
    List<String> problems = new ArrayList<>();
    for (SpokenForm spoken : vocabulary.forms()) {
      if (spoken.meaning() instanceof Token.CodeWords words
          && words.field().isPresent()
          && form.spec(words.field().get()).kind() instanceof FieldKind.Coded coded
          && coded.table().byCode(words.code()).isEmpty()) {
        problems.add(
            spoken.where()
                + ": the "
                + coded.table().name()
                + " table has no code "
                + words.code()
                + "; correct the line or add the code.");
      }
    }
    return problems;
  }
}
