package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.calamus.core.instrument.Decoded;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.InstrumentDecoder;
import org.calamus.core.instrument.LineReader;
import org.calamus.core.record.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The device files that come with Calamus, against the formats that manuals publish. */
class CarriedDevicesTest {

  private static final Instant BEGIN = Instant.parse("2026-05-02T05:30:00Z");
  private static final Path FOLDER = Path.of("devices");

  static List<String> names() {
    return DeviceFiles.carried().names();
  }

  @Test
  void namesListsEveryFileOfTheFolder() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      List<String> found =
          files
              .map(file -> file.getFileName().toString())
              .filter(file -> file.endsWith(".toml"))
              .map(file -> file.replace(".toml", ""))
              .sorted()
              .toList();
      assertThat(names()).isEqualTo(found).hasSizeGreaterThanOrEqualTo(6);
    }
  }

  @ParameterizedTest
  @MethodSource("names")
  void deviceReadsEveryFileAndItsSamples(String name) {
    DeviceDescription fromJar = DeviceFiles.carried().device(name);
    DeviceDescription fromFile = DeviceFiles.carried().device(FOLDER + "/" + name + ".toml");

    assertThat(fromJar.name()).isEqualTo(name).isEqualTo(fromFile.name());
    assertThat(fromJar.port()).isEqualTo(fromFile.port());
    assertThat(fromJar.port().path()).isEmpty();
  }

  /** Source of each line: published in a balance or gauge manual, maker's name left out. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      ignoreLeadingAndTrailingWhitespace = true,
      textBlock =
          """
          # device                     | line                         | amount and stability
          two-letter-header-hundredths | 'US,-00183.96  g'            | -183.96 MOVING
          two-letter-header-hundredths | 'OL,+9999999E+19'            | fault
          two-letter-header            | 'OL,-9999999E+19'            | fault
          double-header                | 'ST,NT,+0012.34kg'           | 12340 STABLE
          question-mark                | '     192.21 g '             | 192.21 STABLE
          question-mark                | '       0.01 g ?'            | 0.01 MOVING
          sixteen-character            | '+    18.32 g  '             | 18.32 STABLE
          sixteen-character            | '  Err 054     '             | fault
          dialog-space                 | 'S S     100.00 g'           | 100.00 STABLE
          dialog-space                 | 'S I'                        | nothing
          dialog-space                 | 'S +'                        | fault
          dialog-space                 | 'S -'                        | fault
          status-mark-first            | '? -   12.345 g  '           | -12.345 MOVING
          status-mark-first            | 'SI E'                       | nothing
          stability-mark-last          | '   +12.34  GS'              | 12.34 STABLE
          gauge-channel-a              | '01A+00012.34'               | 12.34 UNSTATED
          gauge-channel-a              | '01A-001.2340'               | -1.2340 UNSTATED
          gauge-channel-a              | '912'                        | fault
          gauge-measured-word          | '1 MW+003.4665 inch'         | 88.04910 UNSTATED
          gauge-unit-first             | 'V2: mm       -00001.250000' | -1.250000 UNSTATED
          # common practice, no published source
          plain-grams                  | '22.3 g'                     | 22.3 UNSTATED
          """)
  void readGivesWhatTheManualSays(String name, String line, String expected) {
    Decoded decoded = new LineReader(DeviceFiles.carried().device(name).format()).read(line);

    assertThat(words(decoded)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          two-letter-header | 'ST,+00022.3  g'
          two-letter-header-hundredths | 'ST,+00022.30  g'
          double-header | 'ST,NT,+0022.30 g'
          question-mark | '      22.31 g'
          sixteen-character | '+    22.31 g  '
          dialog-space | 'S S      22.31 g'
          status-mark-first | '      22.310 g  '
          stability-mark-last | '   +22.34  GS'
          gauge-channel-a | '01A+00092.34'
          gauge-measured-word | '1 MW+092.3465 mm'
          gauge-unit-first | 'V2: mm       +00092.250000'
          """)
  void readTakesNoLineThatLacksACharacterForAnotherValue(String name, String line) {
    LineReader reader = new LineReader(DeviceFiles.carried().device(name).format());
    String whole = amount(reader.read(line));
    TreeSet<String> given = new TreeSet<>();

    assertThat(whole).isNotEqualTo("nothing");
    for (int from = 0; from < line.length(); from++) {
      for (int to = from + 1; to <= line.length(); to++) {
        given.add(amount(reader.read(line.substring(0, from) + line.substring(to))));
      }
    }

    given.remove(whole); // as where only blanks behind the unit are lost
    assertThat(given).containsExactly("nothing");
  }

  @Test
  void stepGivesNoWrongValueFromADamagedStream() {
    DeviceDescription device = DeviceFiles.carried().device("two-letter-header");
    Random random = new Random(20260412);
    int measured = 0;
    for (int round = 0; round < 2000; round++) {
      TreeSet<String> sent = new TreeSet<>();
      String stream = stream(random, sent);
      String damaged = damage(stream, random);

      List<String> received = amounts(device, damaged, random);

      measured += received.size();
      assertThat(sent).as("round %d: %s", round, damaged).containsAll(received);
    }
    assertThat(measured).isGreaterThan(5000); // the undamaged lines do come through
  }

  @ParameterizedTest
  @MethodSource("names")
  void stepGivesTheSameWhateverThePortions(String name) throws IOException {
    DeviceDescription device = DeviceFiles.carried().device(name);
    String samples = sampleLines(name);
    Random random = new Random(20260413);
    List<String> whole = amounts(device, List.of(bytes(samples)));

    assertThat(whole).isNotEmpty();
    for (int round = 0; round < 100; round++) {
      assertThat(amounts(device, samples, random)).isEqualTo(whole);
    }
  }

  private static String sampleLines(String name) throws IOException {
    List<String> lines =
        Files.readAllLines(FOLDER.resolve(name + ".toml"), StandardCharsets.UTF_8).stream()
            .filter(line -> line.startsWith("line = '"))
            .map(line -> line.substring(8, line.length() - 1))
            .toList();
    return "\r\n" + String.join("\r\n", lines) + "\r\n";
  }

  private static String stream(Random random, TreeSet<String> sent) {
    StringBuilder stream = new StringBuilder();
    for (int i = 0; i < 5; i++) {
      int tenths = random.nextInt(500) + 1;
      String whole = String.format(Locale.ROOT, "%05d", tenths / 10);
      sent.add(tenths / 10 + "." + tenths % 10);
      stream.append("ST,+").append(whole).append('.').append(tenths % 10).append("  g\r\n");
    }
    return stream.toString();
  }

  /** Takes out up to 12 characters, fewer than a line has, or puts in one that is no digit. */
  private static String damage(String stream, Random random) {
    int from = random.nextInt(stream.length());
    if (random.nextInt(3) == 0) {
      return stream.substring(0, from)
          + "?,+-.gS\u0000\u00B2\r\n".charAt(random.nextInt(11))
          + stream.substring(from);
    }
    int to = Math.min(stream.length(), from + 1 + random.nextInt(12));
    return stream.substring(0, from) + stream.substring(to);
  }

  private static List<String> amounts(DeviceDescription device, String stream, Random random) {
    List<byte[]> portions = new ArrayList<>();
    byte[] bytes = bytes(stream);
    for (int from = 0; from < bytes.length; ) {
      int to = Math.min(bytes.length, from + 1 + random.nextInt(9));
      portions.add(Arrays.copyOfRange(bytes, from, to));
      from = to;
    }
    return amounts(device, portions);
  }

  private static List<String> amounts(DeviceDescription device, List<byte[]> portions) {
    InstrumentDecoder decoder = InstrumentDecoder.opened(device, BEGIN);
    List<String> amounts = new ArrayList<>();
    for (byte[] portion : portions) {
      InstrumentDecoder.Step step = decoder.step(portion, BEGIN);
      step.decoded().stream()
          .filter(Decoded.Measured.class::isInstance)
          .forEach(each -> amounts.add(amount(each)));
      decoder = step.next();
    }
    return amounts;
  }

  private static String amount(Decoded decoded) {
    return decoded instanceof Decoded.Measured measured
        ? measured.reading().amount().toPlainString()
        : "nothing";
  }

  private static String words(Decoded decoded) {
    if (decoded instanceof Decoded.Measured measured) {
      Reading reading = measured.reading();
      return reading.amount().toPlainString() + " " + reading.stability();
    }
    return decoded instanceof Decoded.Fault ? "fault" : "nothing";
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
