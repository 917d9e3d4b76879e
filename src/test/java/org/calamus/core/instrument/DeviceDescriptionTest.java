package org.calamus.core.instrument;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.calamus.core.instrument.PortSettings.Flow;
import org.calamus.core.instrument.PortSettings.Level;
import org.calamus.core.instrument.PortSettings.Parity;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;

class DeviceDescriptionTest {

  @Test
  void constructorRefusesAUnitThatCannotFillTheField() {
    assertThatThrownBy(() -> device(FieldId.WING, Optional.empty()))
        .hasMessage("a unit of the instrument cannot fill the field");
  }

  @Test
  void constructorRefusesAFieldThatIsNotMeasured() {
    assertThatThrownBy(() -> device(FieldId.AGE, Optional.empty()))
        .hasMessage("no instrument can fill the field AGE");
  }

  @Test
  void constructorRefusesAPolledInstrumentWhoseEveryReadingIsBelieved() {
    assertThatThrownBy(
            () -> device(FieldId.MASS, Optional.of(new Polling("S\r\n", Duration.ofSeconds(1)))))
        .hasMessageContaining("asked again and again");
  }

  private static DeviceDescription device(FieldId field, Optional<Polling> polling) {
    return new DeviceDescription(
        "test",
        "test",
        new PortSettings("", 9600, 8, Parity.NONE, 1, Flow.NONE, Level.ON, Level.ON),
        Framing.endedBy(Terminator.ANY),
        new LineFormat(
            List.of(new LinePattern.Value(Pattern.compile("(?<value>[0-9.]+) (?<unit>g)"))),
            Map.of(),
            Map.of("g", SentUnit.GRAM),
            Map.of(),
            Optional.empty(),
            LineFormat.DecimalMark.POINT),
        polling,
        Optional.empty(),
        field,
        new StabilityRule.EachReading(BigDecimal.ZERO));
  }
}
