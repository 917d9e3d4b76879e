package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.CodeTable;
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

  private static final Set<FieldId> MEASURED =
      EnumSet.of(FieldId.WING, FieldId.TAIL, FieldId.TARSUS, FieldId.CULMEN, FieldId.MASS);

  /** Fields that are neither measured nor of a table. */
  private static final Set<FieldId> OTHERS =
      EnumSet.of(FieldId.BAND, FieldId.OLD_BAND, FieldId.TIME, FieldId.DATE, FieldId.NOTE);

  private static final int MOST_SHOWN = 12;

  private FieldRules() {}

  static List<Rule> all() {
    List<Rule> rules = new ArrayList<>();
    for (FieldId field : FieldId.values()) {
      if (MEASURED.contains(field)) {
        rules.add(measured(field.key() + ".range", field));
        rules.add(precise(field.key() + ".precision", field));
      } else if (!OTHERS.contains(field)) {
        rules.add(
            new Rule(
                field.key() + ".listed",
                Set.of(field),
                TABLE,
                c -> notListed(field.key() + ".listed", field, c)));
      }
    }
    return List.copyOf(rules);
  }

  /** A form without a table for the field, or without the field, has nothing to hold it against. */
  private static Optional<Finding> notListed(String id, FieldId field, RuleCase c) {
    Optional<CodeTable> table =
        c.form().has(field) ? Findings.table(c.form().spec(field)) : Optional.empty();
    FieldValue value = c.record().value(field).orElseThrow();
    if (table.isEmpty() || isListed(value, c.form().spec(field).kind(), table.get())) {
      return Optional.empty();
    }
    FieldSpec spec = c.form().spec(field);
    return Optional.of(
        tooMany(id, spec, value, table.get())
            .orElseGet(() -> notInTable(id, spec, value, table.get())));
  }

  /** Codes that are all listed, but more than the field takes. */
  private static Optional<Finding> tooMany(
      String id, FieldSpec spec, FieldValue value, CodeTable table) {
    if (!(value instanceof FieldValue.Codes codes)
        || !(spec.kind() instanceof FieldKind.CodedMany kind)
        || codes.codes().size() <= kind.most()
        || !areListed(codes, table)) {
      return Optional.empty();
    }
    return Optional.of(
        Findings.refuses(
            id,
            spec.id(),
            spec.label()
                + " "
                + value.text()
                + " has too many codes: at most "
                + kind.most()
                + " codes would fit.",
            spec.spoken() + " has too many codes. at most " + inWords(kind.most())));
  }

  private static boolean areListed(FieldValue.Codes codes, CodeTable table) {
    return codes.codes().stream().allMatch(code -> table.byCode(code).isPresent());
  }

  private static Finding notInTable(String id, FieldSpec spec, FieldValue value, CodeTable table) {
    return Findings.refuses(
        id,
        spec.id(),
        spec.label()
            + " "
            + value.text()
            + " is not in the "
            + spec.spoken()
            + " table: "
            + fit(table)
            + ".",
        spec.spoken() + " is not in the table");
  }

  private static boolean isListed(FieldValue value, FieldKind kind, CodeTable table) {
    if (value instanceof FieldValue.Codes codes && kind instanceof FieldKind.CodedMany many) {
      return codes.codes().size() <= many.most() && areListed(codes, table);
    }
    return value instanceof FieldValue.Code code && table.byCode(code.code()).isPresent();
  }

  /** What would fit, in short: long tables are not read out. */
  private static String fit(CodeTable table) {
    List<String> codes = table.rows().stream().map(CodeTable.Row::code).toList();
    return codes.size() <= MOST_SHOWN
        ? String.join(", ", codes) + " would fit"
        : "one of its " + codes.size() + " codes would fit";
  }

  private static Rule measured(String id, FieldId field) {
    return new Rule(id, Set.of(field), LIMITS, c -> outOfRange(id, field, c));
  }

  private static Optional<Finding> outOfRange(String id, FieldId field, RuleCase c) {
    if (!c.form().has(field)) {
      return Optional.empty();
    }
    FieldSpec spec = c.form().spec(field);
    Optional<BigDecimal> amount = c.record().amount(field);
    if (!(spec.kind() instanceof FieldKind.Measured kind) || amount.isEmpty()) {
      return Optional.of(wrongKind(id, spec, c.record().value(field).orElseThrow()));
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

  private static Finding wrongKind(String id, FieldSpec spec, FieldValue value) {
    return new Finding(
        id,
        Finding.Severity.REFUSED,
        spec.id(),
        spec.label() + " " + value.text() + " is refused: it must be a number.",
        spec.spoken() + " must be a number");
  }

  private static Rule precise(String id, FieldId field) {
    return new Rule(id, Set.of(field), LIMITS, c -> tooPrecise(id, field, c));
  }

  private static Optional<Finding> tooPrecise(String id, FieldId field, RuleCase c) {
    if (!c.form().has(field)) {
      return Optional.empty();
    }
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
            Findings.shown(c, field)
                + " has "
                + tooManyDecimals(kind.decimals())
                + ". Give it "
                + asDecimals(kind.decimals())
                + ".",
            Findings.spoken(c, field) + " has " + tooManyDecimals(kind.decimals()) + ". again"));
  }

  private static String tooManyDecimals(int most) {
    return most == 0
        ? "decimal places"
        : "more than " + inWords(most) + " decimal place" + (most == 1 ? "" : "s");
  }

  private static String asDecimals(int most) {
    return most == 0 ? "without" : "with " + inWords(most) + " at most";
  }

  private static String inWords(int digit) {
    return Spoken.digits(Integer.toString(digit));
  }
}
