package org.calamus.core.rule;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.calamus.core.record.FieldId;

/**
 * One validation rule. It holds for every way in: said, keyed or measured.
 *
 * @param id its id, such as {@code wing.species}
 * @param inputs the fields that it needs; it is applied when the last of them arrives or changes
 * @param watched further fields that it looks at where they are filled; it is applied when one of
 *     them changes, too
 * @param source where the rule comes from
 * @param check finds something, or nothing
 */
record Rule(
    String id,
    Set<FieldId> inputs,
    Set<FieldId> watched,
    String source,
    Function<RuleCase, Optional<Finding>> check) {

  /** A rule that looks at nothing but what it needs. */
  Rule(String id, Set<FieldId> inputs, String source, Function<RuleCase, Optional<Finding>> check) {
    this(id, inputs, Set.of(), source, check);
  }

  /** The same rule, applied when the day of the capture changes, too. */
  Rule byDay() {
    Set<FieldId> all = EnumSet.of(FieldId.DATE);
    all.addAll(watched);
    return new Rule(id, inputs, all, source, check);
  }

  boolean looksAt(FieldId field) {
    return inputs.contains(field) || watched.contains(field);
  }

  Optional<Finding> apply(RuleCase subject) {
    boolean hasAll = inputs.stream().allMatch(f -> subject.record().entry(f).isPresent());
    return hasAll ? check.apply(subject) : Optional.empty();
  }
}
