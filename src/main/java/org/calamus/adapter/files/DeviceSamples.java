package org.calamus.adapter.files;

import java.util.Map;
import java.util.Set;
import org.calamus.core.instrument.Decoded;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.LineReader;
import org.calamus.core.record.Reading;
import org.calamus.core.record.Reading.Stability;

/** Checks a device description with the {@code [[sample]]} lines of its own file. */
final class DeviceSamples {

  private static final Map<Stability, String> STABILITY_WORDS =
      Map.of(Stability.STABLE, " stable", Stability.MOVING, " moving", Stability.UNSTATED, "");

  private DeviceSamples() {}

  /** Notes every sample that gives something else than it expects. */
  static void check(TomlSection root, DeviceDescription device) {
    if (!root.has("sample")) {
      root.mistake("The file needs at least one [[sample]] by which it can be checked.");
    }
    LineReader reader = new LineReader(device.format());
    for (TomlSection sample : root.sections("sample")) {
      sample.allowOnly(Set.of("line", "expect"));
      String expected = sample.text("expect");
      String line = sample.text("line");
      Decoded decoded = reader.read(line);
      if (!words(decoded).equals(expected)) {
        sample.mistake(
            "expect",
            "The sample line '"
                + line
                + "' should give '"
                + expected
                + "' but gives '"
                + words(decoded)
                + "'"
                + reason(decoded)
                + ".");
      }
    }
  }

  /** How a sample says what it expects. */
  private static String words(Decoded decoded) {
    if (decoded instanceof Decoded.Measured measured) {
      Reading reading = measured.reading();
      return reading.amount().toPlainString()
          + " "
          + reading.unit().symbol()
          + STABILITY_WORDS.get(reading.stability());
    }
    return decoded instanceof Decoded.Fault ? "report" : "nothing";
  }

  private static String reason(Decoded decoded) {
    return decoded instanceof Decoded.Noise noise ? " (" + noise.why() + ")" : "";
  }
}
