package org.calamus.core.speech;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.record.FieldId;

/** What of a meaning is left at a station. */
final class Within {

  private Within() {}

  /** The meaning as far as the form has its fields and codes; empty where nothing is left. */
  static Optional<Token> of(Token token, Form form) {
    if (token instanceof Token.Field name) {
      return Optional.<Token>of(name).filter(n -> form.has(name.field()));
    }
    if (token instanceof Token.CodeWords words) {
      return code(words, form).map(Token.class::cast);
    }
    if (token instanceof Token.NameOrCode both) {
      Optional<Token> name = of(both.name(), form);
      Optional<Token.CodeWords> words = code(both.words(), form);
      return name.isPresent() && words.isPresent()
          ? Optional.of(new Token.NameOrCode(both.name(), words.get()))
          : name.or(() -> words);
    }
    if (token instanceof Token.LetterOrMonth both && !form.has(FieldId.DATE)) {
      return Optional.of(both.letter());
    }
    boolean isOfDate = token instanceof Token.Ordinal || token instanceof Token.MonthName;
    return Optional.of(token).filter(t -> !isOfDate || form.has(FieldId.DATE));
  }

  private static Optional<Token.CodeWords> code(Token.CodeWords words, Form form) {
    if (words.fields().isEmpty()) {
      return Optional.of(words);
    }
    Set<FieldId> fields =
        words.fields().stream()
            .filter(form::has)
            .filter(f -> table(form.spec(f)).flatMap(t -> t.byCode(words.code())).isPresent())
            .collect(Collectors.toSet());
    return fields.isEmpty()
        ? Optional.empty()
        : Optional.of(new Token.CodeWords(fields, words.code()));
  }

  /** The codes of a field; empty where it has none. */
  static Optional<CodeTable> table(FieldSpec spec) {
    if (spec.kind() instanceof FieldKind.Coded coded) {
      return Optional.of(coded.table());
    }
    return spec.kind() instanceof FieldKind.CodedMany many
        ? Optional.of(many.table())
        : Optional.empty();
  }
}
