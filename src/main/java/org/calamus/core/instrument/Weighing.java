package org.calamus.core.instrument;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.instrument.Settled.How;
import org.calamus.core.instrument.StabilityRule.EachReading;
import org.calamus.core.instrument.StabilityRule.WhenSettled;
import org.calamus.core.record.FieldValue.Measure;
import org.calamus.core.record.Reading;
import org.calamus.core.record.Reading.Stability;

/**
 * Watches the readings of one instrument and says once a load when its mass is to be believed.
 * Immutable.
 *
 * <pre>{@code
 * Weighing weighing = Weighing.idle(device.rule());
 * weighing = weighing.step(reading, at);
 * weighing.settled().ifPresent(...);      // filled only by the step that settled it
 * }</pre>
 *
 * <p>A load counts only if the pan was seen empty before it, so that a cone which was never tared,
 * or a bird that has been weighed, is not taken. Readings below zero (the cone was tared and then
 * lifted off) are an empty pan too: the cone may come back with a bird in it. After a load one
 * reading that is not marked as stable does not make an empty pan, since a bird that hops can
 * lighten it for a moment; two in a row do.
 *
 * @param rule when a value is to be believed
 * @param phase where the weighing stands
 * @param recent the latest readings that still count, oldest first
 * @param settled the value that the last step settled
 */
public record Weighing(
    StabilityRule rule, Phase phase, List<Timed> recent, Optional<Settled> settled) {

  /** Copies the list. */
  public Weighing {
    Objects.requireNonNull(rule);
    Objects.requireNonNull(phase);
    recent = List.copyOf(recent);
    Objects.requireNonNull(settled);
  }

  /** Where a weighing stands. */
  public enum Phase {
    /** The pan has not yet been seen empty; a load now on it is not taken. */
    NOT_YET_EMPTY,
    /** The pan is empty and waits for a load. */
    EMPTY,
    /** There is a load that has not settled. */
    LOADED,
    /** The load has been taken; the pan must be emptied before the next. */
    TAKEN
  }

  /**
   * A reading and when it came.
   *
   * @param reading the reading
   * @param at when it came
   */
  public record Timed(Reading reading, Instant at) {
    /** Checks that both parts are there. */
    public Timed {
      Objects.requireNonNull(reading);
      Objects.requireNonNull(at);
    }

    private BigDecimal amount() {
      return reading.amount();
    }
  }

  /** A weighing that has seen no reading yet. */
  public static Weighing idle(StabilityRule rule) {
    return new Weighing(rule, Phase.NOT_YET_EMPTY, List.of(), Optional.empty());
  }

  /**
   * Whether something lies on the pan that has not been seen empty: it is not taken, and the bander
   * must know why.
   */
  public boolean isLoadedBeforeSeenEmpty() {
    return phase == Phase.NOT_YET_EMPTY && rule instanceof WhenSettled;
  }

  /** Takes a reading in; {@link #settled} of the outcome holds a value if this one settled it. */
  public Weighing step(Reading reading, Instant at) {
    if (rule instanceof EachReading each) {
      return single(each, reading);
    }
    if (rule instanceof WhenSettled limits) {
      Timed now = new Timed(reading, at);
      if (reading.amount().compareTo(limits.nearZero()) <= 0) {
        return unloaded(now);
      }
      if (reading.amount().compareTo(limits.emptyBelow()) <= 0) {
        return with(phase, List.of());
      }
      return loaded(limits, now);
    }
    throw new AssertionError(rule);
  }

  private Weighing single(EachReading each, Reading reading) {
    if (reading.stability() == Stability.MOVING
        || reading.amount().compareTo(each.emptyBelow()) <= 0) {
      return with(Phase.EMPTY, List.of());
    }
    Settled value = new Settled(measure(reading), List.of(reading.raw()), How.SENT_SINGLY);
    return new Weighing(rule, Phase.TAKEN, List.of(), Optional.of(value));
  }

  private Weighing unloaded(Timed now) {
    boolean isSecond = !recent.isEmpty() && isUnloaded(recent.get(recent.size() - 1));
    boolean isEmpty = isSecond || now.reading().stability() == Stability.STABLE;
    return phase == Phase.EMPTY || phase == Phase.NOT_YET_EMPTY || isEmpty
        ? with(Phase.EMPTY, List.of())
        : with(phase, List.of(now));
  }

  private boolean isUnloaded(Timed timed) {
    return rule instanceof WhenSettled limits && timed.amount().compareTo(limits.nearZero()) <= 0;
  }

  private Weighing loaded(WhenSettled limits, Timed now) {
    if (phase == Phase.TAKEN || phase == Phase.NOT_YET_EMPTY) {
      return with(phase, List.of());
    }
    List<Timed> kept = kept(limits, now);
    Optional<Settled> value = stable(limits, kept).or(() -> agreed(limits, kept));
    return value.isPresent()
        ? new Weighing(rule, Phase.TAKEN, List.of(), value)
        : with(Phase.LOADED, kept);
  }

  /** The readings that still count with the new one behind them. */
  private List<Timed> kept(WhenSettled limits, Timed now) {
    List<Timed> kept = new ArrayList<>();
    Instant oldest = now.at().minus(limits.agreeWithin());
    for (int i = 0; i < recent.size(); i++) {
      Timed each = recent.get(i);
      // slow instruments: the few before the last stay, however old, to be compared for equality
      boolean isOneOfLast = i > recent.size() - limits.stableReadings();
      if (!isUnloaded(each) && (isOneOfLast || !each.at().isBefore(oldest))) {
        kept.add(each);
      }
    }
    if (!kept.isEmpty() && now.at().isBefore(kept.get(kept.size() - 1).at())) {
      kept.clear(); // the clock was set back: times before and after cannot be compared
    }
    kept.add(now);
    return kept;
  }

  private static Optional<Settled> stable(WhenSettled limits, List<Timed> kept) {
    if (kept.size() < limits.stableReadings()) {
      return Optional.empty();
    }
    List<Timed> last = kept.subList(kept.size() - limits.stableReadings(), kept.size());
    BigDecimal amount = last.get(0).amount();
    boolean isStable =
        last.stream()
            .allMatch(
                each ->
                    each.reading().stability() == Stability.STABLE
                        && each.amount().compareTo(amount) == 0);
    return isStable
        ? Optional.of(settled(last.get(last.size() - 1).reading(), last, How.MARKED_STABLE))
        : Optional.empty();
  }

  private static Optional<Settled> agreed(WhenSettled limits, List<Timed> kept) {
    Instant now = kept.get(kept.size() - 1).at();
    for (int from = kept.size() - limits.agreeReadings(); from >= 0; from--) {
      Duration span = Duration.between(kept.get(from).at(), now);
      if (span.compareTo(limits.agreeWithin()) > 0) {
        return Optional.empty();
      }
      if (span.compareTo(limits.agreeFor()) >= 0) {
        return median(limits, kept.subList(from, kept.size()));
      }
    }
    return Optional.empty();
  }

  private static Optional<Settled> median(WhenSettled limits, List<Timed> readings) {
    List<Timed> sorted = readings.stream().sorted(Comparator.comparing(Timed::amount)).toList();
    Timed median = sorted.get((sorted.size() - 1) / 2);
    BigDecimal spread = sorted.get(sorted.size() - 1).amount().subtract(sorted.get(0).amount());
    BigDecimal allowed =
        median.amount().compareTo(limits.lightBelow()) < 0 ? limits.lightSpread() : limits.spread();
    return spread.compareTo(allowed) <= 0
        ? Optional.of(settled(median.reading(), readings, How.READINGS_AGREED))
        : Optional.empty();
  }

  private static Settled settled(Reading reading, List<Timed> basis, How how) {
    return new Settled(
        measure(reading), basis.stream().map(each -> each.reading().raw()).toList(), how);
  }

  private static Measure measure(Reading reading) {
    return new Measure(reading.amount(), reading.unit());
  }

  private Weighing with(Phase next, List<Timed> readings) {
    return new Weighing(rule, next, readings, Optional.empty());
  }
}
