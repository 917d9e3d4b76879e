package org.calamus.core.rule;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Range;
import org.calamus.core.form.Species;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Spoken;

/** The rules that hold a measured value against what is known of the species. They only ask. */
final class SpeciesRules {

  private static final String SOURCE =
      "the species table: AVONET and Dunning 2008, widened as its header says";

  private SpeciesRules() {}

  static List<Rule> all() {
    return List.of(
        plausible("wing.species", FieldId.WING, "mm"),
        plausible("mass.species", FieldId.MASS, "g"));
  }

  private static Rule plausible(String id, FieldId field, String unit) {
    return new Rule(
        id,
        Set.of(FieldId.SPECIES, field),
        SOURCE,
        c ->
            c.record()
                .code(FieldId.SPECIES)
                .flatMap(c.reference().species()::byCode)
                .flatMap(
                    s ->
                        s.range(field, c.record().code(FieldId.SEX))
                            .flatMap(r -> outside(id, field, c, s, r, unit))));
  }

  private static Optional<Finding> outside(
      String id, FieldId field, RuleCase c, Species species, Range range, String unit) {
    FieldSpec spec = c.form().spec(field);
    return c.record()
        .amount(field)
        .filter(amount -> !range.holds(amount))
        .map(
            amount ->
                new Finding(
                    id,
                    Finding.Severity.ASKS,
                    field,
                    shown(spec, amount, species, range, unit),
                    spoken(spec, amount, range)));
  }

  private static String shown(
      FieldSpec spec, BigDecimal amount, Species species, Range range, String unit) {
    return String.join(
            " ",
            spec.label(),
            amount.toPlainString(),
            unit,
            "is outside",
            range.text(),
            unit,
            "for",
            species.name())
        + Slips.likely(amount, range).map(l -> "; " + l.toPlainString() + " would fit").orElse("")
        + ".";
  }

  private static String spoken(FieldSpec spec, BigDecimal amount, Range range) {
    String side = amount.compareTo(range.least()) < 0 ? "small" : "large";
    return spec.spoken()
        + " "
        + Spoken.number(amount)
        + " is "
        + side
        + Slips.likely(amount, range).map(l -> ". perhaps " + Spoken.number(l)).orElse("");
  }
}
