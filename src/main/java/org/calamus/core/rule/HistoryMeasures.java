package org.calamus.core.rule;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Range;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Finding.Severity;

/** The rules that hold a recaptured bird's measures against its own earlier ones. */
final class HistoryMeasures {

  private static final String PRACTICE = "common practice, no published source";

  /** The least difference between two wings of one bird that is asked about, in millimetres. */
  private static final BigDecimal WING = new BigDecimal("3");

  /** The same as a share of the wing, for large birds. */
  private static final BigDecimal WING_SHARE = new BigDecimal("0.04");

  /** How much longer a bird's wing may be once its first flight feathers were replaced. */
  private static final BigDecimal WING_GROWTH = new BigDecimal("4");

  /** The month in which the flight feathers of the hatching year begin to be replaced. */
  private static final int MOULT_MONTH = 8;

  /** The tarsus is bone and does not grow; what differs is how it was measured. */
  private static final BigDecimal TARSUS = new BigDecimal("0.8");

  /** As many earlier measures are shown, the last. */
  private static final int SHOWN = 3;

  private static final BigDecimal MASS_SHARE = new BigDecimal("0.25");
  private static final Duration MASS_WITHIN = Duration.ofDays(10);

  private HistoryMeasures() {}

  static List<Rule> all() {
    Set<FieldId> bird = HistoryRules.WHICH_BIRD;
    return List.of(
        new Rule("recapture.wing", Set.of(FieldId.WING), bird, PRACTICE, HistoryMeasures::otherWing)
            .byDay(),
        new Rule(
            "recapture.tarsus",
            Set.of(FieldId.TARSUS),
            bird,
            PRACTICE,
            HistoryMeasures::otherTarsus),
        new Rule("recapture.mass", Set.of(FieldId.MASS), bird, PRACTICE, HistoryMeasures::otherMass)
            .byDay());
  }

  /** The mean of the earlier amounts; empty where there is none. */
  private static Optional<BigDecimal> mean(RuleCase c, FieldId field) {
    List<BigDecimal> earlier = c.history().stream().flatMap(p -> p.amount(field).stream()).toList();
    return earlier.isEmpty()
        ? Optional.empty()
        : Optional.of(
            earlier.stream()
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .divide(BigDecimal.valueOf(earlier.size()), 2, RoundingMode.HALF_EVEN));
  }

  private static Optional<Finding> otherWing(RuleCase c) {
    return mean(c, FieldId.WING)
        .flatMap(
            mean -> {
              BigDecimal limit = WING.max(mean.multiply(WING_SHARE));
              BigDecimal growth = hasMoultedSince(c) ? WING_GROWTH.max(limit) : limit;
              Range fits = new Range(mean.subtract(limit), mean.add(growth));
              return outside("recapture.wing", FieldId.WING, c, fits, earlier(c, FieldId.WING));
            });
  }

  /** Whether a wing of the hatching year's feathers was measured, and those are replaced now. */
  private static boolean hasMoultedSince(RuleCase c) {
    return c.history().stream()
        .filter(p -> p.amount(FieldId.WING).isPresent())
        .anyMatch(
            p ->
                moult(c, p)
                    .filter(day -> p.day(c.policy().zone()).isBefore(day))
                    .filter(day -> !c.date().isBefore(day))
                    .isPresent());
  }

  /** When the bird began to replace the feathers it hatched with; empty without a birth year. */
  private static Optional<LocalDate> moult(RuleCase c, PastCapture capture) {
    return capture
        .code(FieldId.AGE)
        .map(a -> c.stated(a, capture))
        .flatMap(c.reference().ages()::birthYears)
        .filter(b -> b.earliest().isPresent() && b.earliest().getAsInt() == b.latest())
        .map(b -> LocalDate.of(b.latest() + 1, MOULT_MONTH, 1));
  }

  private static Optional<Finding> otherTarsus(RuleCase c) {
    return mean(c, FieldId.TARSUS)
        .flatMap(
            mean ->
                outside(
                    "recapture.tarsus",
                    FieldId.TARSUS,
                    c,
                    new Range(mean.subtract(TARSUS), mean.add(TARSUS)),
                    earlier(c, FieldId.TARSUS)));
  }

  private static Optional<Finding> otherMass(RuleCase c) {
    return HistoryRules.latest(c, p -> c.isNotLater(p) && p.amount(FieldId.MASS).isPresent())
        .filter(
            p -> Duration.between(c.when(p.caught()), c.when()).abs().compareTo(MASS_WITHIN) <= 0)
        .flatMap(
            p -> {
              BigDecimal then = p.amount(FieldId.MASS).orElseThrow();
              BigDecimal limit = then.multiply(MASS_SHARE);
              return outside(
                  "recapture.mass",
                  FieldId.MASS,
                  c,
                  new Range(then.subtract(limit), then.add(limit)),
                  then.toPlainString() + " on " + HistoryRules.day(c, p));
            });
  }

  /** The last of the earlier amounts, as shown. */
  private static String earlier(RuleCase c, FieldId field) {
    List<PastCapture> measured =
        c.history().stream().filter(p -> p.amount(field).isPresent()).toList();
    return measured.stream()
        .skip(Math.max(0, measured.size() - SHOWN))
        .map(p -> p.amount(field).orElseThrow().toPlainString() + " on " + HistoryRules.day(c, p))
        .reduce((a, b) -> a + ", " + b)
        .orElse("");
  }

  private static Optional<Finding> outside(
      String rule, FieldId field, RuleCase c, Range fits, String earlier) {
    FieldSpec spec = c.form().spec(field);
    return c.record()
        .amount(field)
        .filter(amount -> !fits.holds(amount))
        .map(
            amount ->
                new Finding(
                    rule,
                    Severity.ASKS,
                    field,
                    spec.label()
                        + " "
                        + amount.toPlainString()
                        + " does not fit the same bird's "
                        + earlier
                        + "; "
                        + plain(fits.least())
                        + " to "
                        + plain(fits.most())
                        + " would fit.",
                    spec.spoken()
                        + " "
                        + Spoken.number(amount)
                        + ". last time "
                        + HistoryRules.latest(c, p -> p.amount(field).isPresent())
                            .flatMap(p -> p.amount(field))
                            .map(Spoken::number)
                            .orElse("")));
  }

  private static String plain(BigDecimal amount) {
    return amount.setScale(1, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
  }
}
