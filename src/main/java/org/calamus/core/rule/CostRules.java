package org.calamus.core.rule;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.CodeTable;
import org.calamus.core.record.FieldId;

/**
 * The rules about values that may well be right and would cost much if they were not, as a death
 * does. Which codes these are, and what they would lead to, stands in the code tables.
 */
final class CostRules {

  private static final String SOURCE =
      "the cost in the field's code table; common practice, no published source";

  private CostRules() {}

  static List<Rule> all() {
    return List.of(
        costly("release.cost", FieldId.RELEASE, FieldId.DISPOSITION),
        costly("disposition.cost", FieldId.DISPOSITION, FieldId.RELEASE));
  }

  /** The other field may have the same said already, and then it was asked there. */
  private static Rule costly(String id, FieldId field, FieldId other) {
    return new Rule(id, Set.of(field), Set.of(other), SOURCE, c -> costly(id, field, other, c));
  }

  private static Optional<Finding> costly(String id, FieldId field, FieldId other, RuleCase c) {
    if (c.isKept(field, id)) {
      return Optional.empty();
    }
    List<String> said = costs(c, other);
    return costs(c, field).stream()
        .filter(cost -> !said.contains(cost))
        .findFirst()
        .map(
            cost ->
                Findings.asks(
                    id,
                    field,
                    Findings.shown(c, field) + ": " + cost + ".",
                    cost.toLowerCase(Locale.ROOT)));
  }

  private static List<String> costs(RuleCase c, FieldId field) {
    Optional<CodeTable> table = Findings.table(c, field);
    return c.record().codes(field).stream()
        .flatMap(code -> table.flatMap(t -> t.byCode(code)).stream())
        .map(CodeTable.Row::cost)
        .filter(cost -> !cost.isEmpty())
        .toList();
  }
}
