package org.calamus.core.rule;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.calamus.core.form.CodeTable;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/** Words findings the same way everywhere: the field, its value, and what would fit. */
final class Findings {

  private static final Pattern DIGITS = Pattern.compile("[0-9]+");

  /** Fields whose words tell by themselves which field they are of. */
  private static final Set<FieldId> SAID_WITHOUT_NAME =
      Set.of(FieldId.SPECIES, FieldId.AGE, FieldId.SEX);

  private Findings() {}

  /**
   * A rule that asks where two fields of a bird do not go together.
   *
   * @param id its id
   * @param about the field that the question is about
   * @param with the other field
   * @param watched further fields that the test looks at where they are filled
   * @param source where it is from
   * @param isOdd whether they do not go together; called where both are filled
   * @param fit what would fit, as shown behind a colon
   */
  static Rule pair(
      String id,
      FieldId about,
      FieldId with,
      Set<FieldId> watched,
      String source,
      Predicate<RuleCase> isOdd,
      String fit) {
    return new Rule(
        id,
        Set.of(about, with),
        watched,
        source,
        c -> isOdd.test(c) ? Optional.of(pair(c, id, about, with, fit)) : Optional.empty());
  }

  private static Finding pair(RuleCase c, String id, FieldId about, FieldId with, String fit) {
    return asks(
        id,
        about,
        shown(c, about) + " with " + shown(c, with) + ": " + fit + ".",
        doesNotFit(c, about, with));
  }

  /**
   * That two filled fields do not fit each other, as said: {@code skull four does not fit after
   * hatching year}.
   */
  static String doesNotFit(RuleCase c, FieldId about, FieldId with) {
    String other = SAID_WITHOUT_NAME.contains(with) ? said(c, with) : spoken(c, with);
    return spoken(c, about) + " does not fit " + other;
  }

  /** A doubt. */
  static Finding asks(String id, FieldId field, String shown, String spoken) {
    return new Finding(id, Finding.Severity.ASKS, field, shown, spoken);
  }

  /** A note. */
  static Finding notes(String id, FieldId field, String shown, String spoken) {
    return new Finding(id, Finding.Severity.NOTES, field, shown, spoken);
  }

  /** A refusal. */
  static Finding refuses(String id, FieldId field, String shown, String spoken) {
    return new Finding(id, Finding.Severity.REFUSED, field, shown, spoken);
  }

  /** The field's name on the screen; its key where the form does not have it. */
  static String label(RuleCase c, FieldId field) {
    return c.form().has(field) ? c.form().spec(field).label() : field.key();
  }

  /** The field's name in speech; its key in words where the form does not have it. */
  static String name(RuleCase c, FieldId field) {
    return c.form().has(field) ? c.form().spec(field).spoken() : Spoken.name(field.key());
  }

  /** A filled field with its value, as on the screen: {@code Wing chord 92 mm}. */
  static String shown(RuleCase c, FieldId field) {
    FieldValue value = c.record().value(field).orElseThrow();
    String unit = value instanceof FieldValue.Measure m ? " " + m.unit().symbol() : "";
    return label(c, field) + " " + value.text() + unit;
  }

  /** A filled field with its value, as said: scores digit by digit, other codes in words. */
  static String spoken(RuleCase c, FieldId field) {
    FieldValue value = c.record().value(field).orElseThrow();
    if (value instanceof FieldValue.Measure measure) {
      return name(c, field) + " " + Spoken.number(measure.amount());
    }
    return name(c, field) + " " + said(c, field);
  }

  private static String said(RuleCase c, FieldId field) {
    return c.record().codes(field).stream()
        .map(code -> words(c, field, code))
        .collect(Collectors.joining(" "));
  }

  /** A code of a field in words that can be said. */
  static String words(RuleCase c, FieldId field, String code) {
    String words = table(c, field).map(t -> t.words(code)).orElse(code);
    boolean isCode = words.equals(code) || DIGITS.matcher(code + words).find();
    return isCode ? Spoken.characters(code) : words.toLowerCase(Locale.ROOT).replace(',', ' ');
  }

  /** The codes that the form's table of a field lists; none where the form has no such table. */
  static List<String> codes(RuleCase c, FieldId field) {
    return table(c, field).map(CodeTable::rows).orElse(List.of()).stream()
        .map(CodeTable.Row::code)
        .toList();
  }

  /** The code table of a field; empty where the form has no such field, or none for it. */
  static Optional<CodeTable> table(RuleCase c, FieldId field) {
    return c.form().has(field) ? table(c.form().spec(field)) : Optional.empty();
  }

  /** The code table of a field that has one. */
  static Optional<CodeTable> table(FieldSpec spec) {
    if (spec.kind() instanceof FieldKind.CodedMany many) {
      return Optional.of(many.table());
    }
    return spec.kind() instanceof FieldKind.Coded coded
        ? Optional.of(coded.table())
        : Optional.empty();
  }
}
