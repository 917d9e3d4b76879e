package org.calamus.core.record;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * A value that was accepted into a field.
 *
 * @param value the value
 * @param provenance how it came in
 * @param at when it was accepted (UTC)
 * @param confirmedRules ids of the rules that doubted the value and were overruled by the bander;
 *     empty where no rule asked
 */
public record Entry(
    FieldValue value, Provenance provenance, Instant at, List<String> confirmedRules) {

  /** Copies the list and checks the parts. */
  public Entry {
    Objects.requireNonNull(value);
    Objects.requireNonNull(provenance);
    Objects.requireNonNull(at);
    confirmedRules = List.copyOf(confirmedRules);
  }

  /** Whether a rule had doubted the value and the bander confirmed it. */
  public boolean isConfirmedDoubt() {
    return !confirmedRules.isEmpty();
  }
}
