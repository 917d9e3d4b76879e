package org.calamus.core.instrument;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.Reading.Stability;

/**
 * What the lines of an instrument mean.
 *
 * @param patterns the kinds of line; the first that fits decides
 * @param stability what the text of the group {@code stable}, without blanks around it, means; the
 *     empty text may be one of them
 * @param units what the text of the group {@code unit}, without blanks around it, means; the empty
 *     text is the unit of lines that name none
 * @param statusFaults sentences for those texts of the group {@code status} that say that something
 *     is wrong; every other text is well
 * @param channel the channel to listen to, where the instrument has several and sends their names
 * @param decimalMark the character between the whole and the fraction
 */
public record LineFormat(
    List<LinePattern> patterns,
    Map<String, Stability> stability,
    Map<String, SentUnit> units,
    Map<String, String> statusFaults,
    Optional<String> channel,
    DecimalMark decimalMark) {

  /** Copies the collections; there must be a value pattern and a unit. */
  public LineFormat {
    patterns = List.copyOf(patterns);
    stability = Map.copyOf(stability);
    units = Map.copyOf(units);
    statusFaults = Map.copyOf(statusFaults);
    Objects.requireNonNull(channel);
    Objects.requireNonNull(decimalMark);
    if (patterns.stream().noneMatch(LinePattern.Value.class::isInstance)) {
      throw new IllegalArgumentException("no pattern gives a value");
    }
    if (units.isEmpty()) {
      throw new IllegalArgumentException("there is no unit");
    }
  }

  /** The character between the whole and the fraction of a number. */
  public enum DecimalMark {
    /** A point. */
    POINT,
    /** A comma. */
    COMMA
  }
}
