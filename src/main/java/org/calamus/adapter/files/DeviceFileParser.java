package org.calamus.adapter.files;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.Framing;
import org.calamus.core.instrument.LineFormat;
import org.calamus.core.instrument.LinePattern;
import org.calamus.core.instrument.Polling;
import org.calamus.core.instrument.PortSettings;
import org.calamus.core.instrument.PortSettings.Flow;
import org.calamus.core.instrument.PortSettings.Level;
import org.calamus.core.instrument.PortSettings.Parity;
import org.calamus.core.instrument.SentUnit;
import org.calamus.core.instrument.StabilityRule;
import org.calamus.core.instrument.Terminator;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Reading.Stability;
import org.calamus.port.Devices.DeviceException;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;

/** Reads the text of one device file and checks it with the samples in it. Used once. */
final class DeviceFileParser {

  private static final Set<String> KEYS =
      Set.of(
          "title",
          "field",
          "silence-limit-seconds",
          "channel",
          "decimal-mark",
          "port",
          "framing",
          "line",
          "stability",
          "units",
          "status",
          "polling",
          "settling",
          "sample");
  private static final Map<String, Level> LEVELS = Map.of("on", Level.ON, "off", Level.OFF);

  private final String file;
  private final List<String> mistakes = new ArrayList<>();

  private DeviceFileParser(String file) {
    this.file = file;
  }

  /**
   * Reads a device file.
   *
   * @param file the name of the file, for the messages
   * @param name the name of the instrument
   * @param text the text of the file
   * @throws DeviceException with one sentence for every mistake
   */
  static DeviceDescription parse(String file, String name, String text) {
    return new DeviceFileParser(file).parse(name, text);
  }

  private DeviceDescription parse(String name, String text) {
    TomlParseResult toml = Toml.parse(text);
    toml.errors()
        .forEach(
            error ->
                mistakes.add(TomlSection.at(file, error.position(), error.getMessage() + ".")));
    giveUpOnMistakes();
    TomlSection root = TomlSection.root(file, toml, mistakes);
    Optional<DeviceDescription> device = description(name, root);
    device.ifPresent(read -> DeviceSamples.check(root, read));
    giveUpOnMistakes();
    return device.orElseThrow();
  }

  private void giveUpOnMistakes() {
    if (!mistakes.isEmpty()) {
      throw new DeviceException(String.join("\n", mistakes));
    }
  }

  private Optional<DeviceDescription> description(String name, TomlSection root) {
    root.allowOnly(KEYS);
    String title = root.text("title");
    FieldId field = root.choice("field", TomlSection.ordered(List.of(FieldId.MASS, FieldId.WING)));
    Optional<PortSettings> port = port(root.section("port"));
    Optional<Framing> framing = framing(root.section("framing"));
    Optional<LineFormat> format = format(root);
    Optional<Polling> polling = polling(root);
    Optional<Duration> silence =
        root.has("silence-limit-seconds")
            ? Optional.of(Duration.ofSeconds(root.whole("silence-limit-seconds", 1, 3600)))
            : Optional.empty();
    Optional<StabilityRule> rule = SettlingSection.rule(root.section("settling"), field);
    if (!mistakes.isEmpty()) {
      return Optional.empty();
    }
    return root.make(
        () ->
            new DeviceDescription(
                name,
                title,
                port.orElseThrow(),
                framing.orElseThrow(),
                format.orElseThrow(),
                polling,
                silence,
                field,
                rule.orElseThrow()));
  }

  private Optional<PortSettings> port(TomlSection section) {
    section.allowOnly(
        Set.of("path", "baud", "data-bits", "parity", "stop-bits", "flow", "dtr", "rts"));
    String path = section.textOr("path", "");
    int baud = section.whole("baud", 50, 4_000_000);
    int dataBits = section.wholeOr("data-bits", 7, 8, 8);
    Parity parity =
        section.choiceOr(
            "parity", TomlSection.ordered(Arrays.asList(Parity.values())), Parity.NONE);
    int stopBits = section.wholeOr("stop-bits", 1, 2, 1);
    Flow flow =
        section.choiceOr("flow", TomlSection.ordered(Arrays.asList(Flow.values())), Flow.NONE);
    Level dtr = section.choiceOr("dtr", LEVELS, Level.ON);
    Level rts = section.choiceOr("rts", LEVELS, Level.ON);
    return section.make(
        () -> new PortSettings(path, baud, dataBits, parity, stopBits, flow, dtr, rts));
  }

  private Optional<Framing> framing(TomlSection section) {
    section.allowOnly(
        Set.of(
            "ends-with",
            "fixed-length",
            "parity-bit",
            "first-line",
            "longest-line",
            "longest-pause-milliseconds"));
    if (section.has("fixed-length") && section.has("ends-with")) {
      section.mistake("fixed-length", "A line has a fixed length or a terminator, not both.");
    }
    Map<String, Terminator> terminators =
        TomlSection.named(List.of(Terminator.values()), Terminator::word);
    Framing.Ending ending =
        section.has("fixed-length")
            ? new Framing.FixedLength(section.whole("fixed-length", 1, 1000))
            : new Framing.Terminated(section.choice("ends-with", terminators));
    Framing.HighBit highBit =
        section.choiceOr(
            "parity-bit",
            Map.of("strip", Framing.HighBit.STRIP, "refuse", Framing.HighBit.REFUSE),
            Framing.HighBit.REFUSE);
    Framing.Beginning beginning =
        section.choiceOr(
            "first-line",
            Map.of("read", Framing.Beginning.WHOLE, "drop", Framing.Beginning.MAY_BE_CUT),
            Framing.Beginning.MAY_BE_CUT);
    int longest = section.wholeOr("longest-line", 1, 1000, Framing.USUAL_LONGEST_LINE);
    int pause =
        section.wholeOr(
            "longest-pause-milliseconds", 1, 60_000, (int) Framing.USUAL_LONGEST_PAUSE.toMillis());
    return section.make(
        () -> new Framing(ending, highBit, beginning, longest, Duration.ofMillis(pause)));
  }

  private Optional<LineFormat> format(TomlSection root) {
    List<LinePattern> patterns = new ArrayList<>();
    root.sections("line").forEach(line -> pattern(line).ifPresent(patterns::add));
    if (!root.has("line")) {
      root.mistake("The file needs at least one [[line]] with a pattern.");
      return Optional.empty();
    }
    Map<String, Stability> stability =
        root.section("stability")
            .choices(Map.of("stable", Stability.STABLE, "moving", Stability.MOVING));
    Map<String, SentUnit> units =
        root.section("units")
            .choices(TomlSection.named(List.of(SentUnit.values()), SentUnit::symbol));
    Map<String, String> status = root.section("status").texts();
    Optional<String> channel =
        Optional.of(root.textOr("channel", "")).filter(text -> !text.isEmpty());
    LineFormat.DecimalMark mark =
        root.choiceOr(
            "decimal-mark",
            TomlSection.ordered(List.of(LineFormat.DecimalMark.values())),
            LineFormat.DecimalMark.POINT);
    return mistakes.isEmpty()
        ? root.make(() -> new LineFormat(patterns, stability, units, status, channel, mark))
        : Optional.empty();
  }

  private Optional<LinePattern> pattern(TomlSection line) {
    line.allowOnly(Set.of("pattern", "is", "say"));
    String kind =
        line.choice("is", Map.of("value", "value", "ignore", "ignore", "report", "report"));
    String say = kind.equals("value") ? line.textOr("say", "") : line.text("say");
    Pattern pattern;
    try {
      pattern = Pattern.compile(line.text("pattern"));
    } catch (PatternSyntaxException e) {
      line.mistake(
          "pattern",
          "The pattern is not written rightly: "
              + e.getDescription()
              + " at character "
              + (e.getIndex() + 1)
              + " of it.");
      return Optional.empty();
    }
    return switch (kind) {
      case "value" -> line.make(() -> new LinePattern.Value(pattern));
      case "ignore" -> line.make(() -> new LinePattern.Ignored(pattern, say));
      default -> line.make(() -> new LinePattern.Reported(pattern, say));
    };
  }

  private Optional<Polling> polling(TomlSection root) {
    if (!root.has("polling")) {
      return Optional.empty();
    }
    TomlSection section = root.section("polling");
    section.allowOnly(Set.of("request", "every-milliseconds"));
    String request = section.text("request");
    int every = section.whole("every-milliseconds", 50, 60_000);
    return section.make(() -> new Polling(request, Duration.ofMillis(every)));
  }
}
