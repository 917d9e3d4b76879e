package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Range;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Spoken;

/** The rules that look at one field alone: its code is in the table, its number in the range. */
final class FieldRules {

  private static final String TABLE = "the field's code table";
  private static final String LIMITS = "the form's limits; common practice, no published source";

  private FieldRules() {}

  static List<Rule> all() {
    return List.of(
        coded("species.listed", FieldId.SPECIES),
        coded("age.listed", FieldId.AGE),
        coded("sex.listed", FieldId.SEX),
        measured("wing.range", FieldId.WING),
        measured("mass.range", FieldId.MASS),
        precise("wing.precision", FieldId.WING),
        precise("mass.precision", FieldId.MASS));
  }

  private static Rule coded(String id, FieldId field) {
    return new Rule(id, Set.of(field), TABLE, c -> notListed(id, field, c));
  }

  private static Optional<Finding> notListed(String id, FieldId field, RuleCase c) {
    FieldSpec spec = c.form().spec(field);
    FieldValue value = c.record().value(field).orElseThrow();
    if (value instanceof FieldValue.Code code
        && spec.kind() instanceof FieldKind.Coded coded
        && coded.table().byCode(code.code()).isPresent()) {
      return Optional.empty();
    }
    return Optional.of(
        new Finding(
            id,
            Finding.Severity.REFUSED,
            field,
            spec.label() + " " + value.text() + " is not in the " + spec.spoken() + " table.",
            spec.spoken() + " not in the table"));
  }

  private static Rule measured(String id, FieldId field) {
    return new Rule(id, Set.of(field), LIMITS, c -> outOfRange(id, field, c));
  }

  private static Optional<Finding> outOfRange(String id, FieldId field, RuleCase c) {
    FieldSpec spec = c.form().spec(field);
    Optional<BigDecimal> amount = c.record().amount(field);
    if (!(spec.kind() instanceof FieldKind.Measured kind) || amount.isEmpty()) {
      return Optional.of(wrongKind(id, spec));
    }
    Range range = new Range(kind.least(), kind.most());
    if (range.holds(amount.get())) {
      return Optional.empty();
    }
    String unit = kind.unit().symbol();
    return Optional.of(
        new Finding(
            id,
            Finding.Severity.REFUSED,
            field,
            String.join(
                " ",
                spec.label(),
                amount.get().toPlainString(),
                unit,
                "is refused: it must be",
                range.text(),
                unit + ". Give it again."),
            spec.spoken() + " " + Spoken.number(amount.get()) + " is out of range. again"));
  }

  private static Finding wrongKind(String id, FieldSpec spec) {
    return new Finding(
        id,
        Finding.Severity.REFUSED,
        spec.id(),
        spec.label() + " must be a number.",
        spec.spoken() + " must be a number");
  }

  private static Rule precise(String id, FieldId field) {
    return new Rule(id, Set.of(field), LIMITS, c -> tooPrecise(id, field, c));
  }

  private static Optional<Finding> tooPrecise(String id, FieldId field, RuleCase c) {
    FieldSpec spec = c.form().spec(field);
    Optional<BigDecimal> amount = c.record().amount(field);
    if (!(spec.kind() instanceof FieldKind.Measured kind)
        || amount.isEmpty()
        || amount.get().scale() <= kind.decimals()) {
      return Optional.empty();
    }
    return Optional.of(
        new Finding(
            id,
            Finding.Severity.REFUSED,
            field,
            String.join(
                " ",
                spec.label(),
                amount.get().toPlainString(),
                "has more than",
                Integer.toString(kind.decimals()),
                "decimal places. Give it again."),
            spec.spoken() + " has too many decimals. again"));
  }
}
