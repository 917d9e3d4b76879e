package org.calamus.core.instrument;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.calamus.core.record.Reading;
import org.calamus.core.record.Reading.Stability;

/** Reads the lines of one kind of instrument. Immutable. */
public final class LineReader {

  private static final Pattern NUMBER = Pattern.compile("[0-9]+(\\.[0-9]*)?|\\.[0-9]+");

  private final LineFormat format;

  /** A reader of the lines of this format. */
  public LineReader(LineFormat format) {
    this.format = format;
  }

  /**
   * Reads a line. Anything that is not wholly understood is noise; a value is never guessed.
   *
   * @param line the line without its terminator
   */
  public Decoded read(String line) {
    for (LinePattern kind : format.patterns()) {
      Matcher matcher = kind.pattern().matcher(line);
      if (!matcher.matches()) {
        continue;
      }
      if (kind instanceof LinePattern.Value value) {
        return new Fields(line, matcher, LinePattern.groupsOf(value.pattern())).decode(format);
      }
      if (kind instanceof LinePattern.Ignored ignored) {
        return new Decoded.Noise(line, ignored.why());
      }
      if (kind instanceof LinePattern.Reported reported) {
        return new Decoded.Fault(reported.sentence());
      }
      throw new AssertionError(kind);
    }
    return new Decoded.Noise(line, "no pattern of the device file fits the line");
  }

  /** The named parts of a line that fits a value pattern. */
  private record Fields(String line, Matcher matcher, Set<String> groups) {

    Decoded decode(LineFormat format) {
      Optional<String> fault = Optional.ofNullable(format.statusFaults().get(text("status")));
      if (groups.contains("status") && fault.isPresent()) {
        return new Decoded.Fault(fault.get());
      }
      if (groups.contains("channel")
          && !format.channel().orElse(text("channel")).equals(text("channel"))) {
        return noise("the device file listens to another channel");
      }
      Optional<SentUnit> unit = Optional.ofNullable(format.units().get(text("unit")));
      if (unit.isEmpty()) {
        return noise("the unit \"" + text("unit") + "\" is not in the device file");
      }
      Optional<Stability> stability = stability(format);
      if (stability.isEmpty()) {
        return noise("the stability mark \"" + text("stable") + "\" is not in the device file");
      }
      Optional<BigDecimal> amount = amount(format);
      if (amount.isEmpty()) {
        return noise("the value is no number");
      }
      return new Decoded.Measured(
          new Reading(unit.get().toOurs(amount.get()), unit.get().ours(), stability.get(), line));
    }

    private Optional<Stability> stability(LineFormat format) {
      return groups.contains("stable")
          ? Optional.ofNullable(format.stability().get(text("stable")))
          : Optional.of(Stability.UNSTATED);
    }

    private Optional<BigDecimal> amount(LineFormat format) {
      String digits = text("value");
      if (format.decimalMark() == LineFormat.DecimalMark.COMMA) {
        if (digits.indexOf('.') >= 0) {
          return Optional.empty();
        }
        digits = digits.replace(',', '.');
      }
      String sign = text("sign");
      if (!NUMBER.matcher(digits).matches() || !Set.of("", "+", "-").contains(sign)) {
        return Optional.empty();
      }
      BigDecimal amount = new BigDecimal(digits);
      return Optional.of(sign.equals("-") ? amount.negate() : amount);
    }

    private String text(String group) {
      String text = groups.contains(group) ? matcher.group(group) : null;
      return text == null ? "" : text.strip();
    }

    private Decoded noise(String why) {
      return new Decoded.Noise(line, why);
    }
  }
}
