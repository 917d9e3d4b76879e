package org.calamus.adapter.files;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.instrument.StabilityRule;
import org.calamus.core.instrument.StabilityRule.EachReading;
import org.calamus.core.instrument.StabilityRule.WhenSettled;
import org.calamus.core.record.FieldId;

/** Reads the table {@code [settling]} of a device file: when a value is to be believed. */
final class SettlingSection {

  private SettlingSection() {}

  /** Reads the rule; only a mass can be waited for. */
  static Optional<StabilityRule> rule(TomlSection section, FieldId field) {
    String when =
        section.choice("when", Map.of("settled", "settled", "each reading", "each reading"));
    if (when.equals("each reading")) {
      section.allowOnly(Set.of("when", "empty-below"));
      return section.make(() -> new EachReading(section.decimalOr("empty-below", BigDecimal.ZERO)));
    }
    if (field != FieldId.MASS) {
      section.mistake("when", "Only a mass can be waited for until it has settled.");
    }
    return settled(section);
  }

  private static Optional<StabilityRule> settled(TomlSection section) {
    section.allowOnly(
        Set.of(
            "when",
            "empty-below",
            "near-zero",
            "stable-readings",
            "agree-for-milliseconds",
            "agree-within-milliseconds",
            "agree-readings",
            "spread",
            "light-spread",
            "light-below"));
    WhenSettled usual = WhenSettled.BIRDS;
    int agreeFor =
        section.wholeOr("agree-for-milliseconds", 0, 60_000, (int) usual.agreeFor().toMillis());
    int agreeWithin =
        section.wholeOr(
            "agree-within-milliseconds", 0, 60_000, (int) usual.agreeWithin().toMillis());
    return section.make(
        () ->
            new WhenSettled(
                section.decimalOr("empty-below", usual.emptyBelow()),
                section.decimalOr("near-zero", usual.nearZero()),
                section.wholeOr("stable-readings", 1, 100, usual.stableReadings()),
                Duration.ofMillis(agreeFor),
                Duration.ofMillis(agreeWithin),
                section.wholeOr("agree-readings", 2, 100, usual.agreeReadings()),
                section.decimalOr("spread", usual.spread()),
                section.decimalOr("light-spread", usual.lightSpread()),
                section.decimalOr("light-below", usual.lightBelow())));
  }
}
