package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.PortSettings.Parity;
import org.calamus.core.instrument.StabilityRule.WhenSettled;
import org.calamus.core.record.FieldId;
import org.calamus.port.Devices.DeviceException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeviceFilesTest {

  private static final String GOOD =
      """
      title = "test balance"
      field = "mass"
      [port]
      baud = 4800
      parity = "odd"
      [framing]
      ends-with = "CR LF"
      [[line]]
      is = "value"
      pattern = '(?<value>[0-9.]+) (?<unit>g)'
      [units]
      g = "g"
      [settling]
      when = "settled"
      spread = '0.4'
      agree-for-milliseconds = 1200
      [[sample]]
      line = '22.30 g'
      expect = '22.30 g'
      """;

  @TempDir private Path folder;

  @Test
  void deviceReadsAFileOfTheFolder() throws IOException {
    write(GOOD);

    DeviceDescription device = DeviceFiles.in(folder).device("mine");

    assertThat(device.name()).isEqualTo("mine");
    assertThat(device.title()).isEqualTo("test balance");
    assertThat(device.field()).isEqualTo(FieldId.MASS);
    assertThat(device.port().baud()).isEqualTo(4800);
    assertThat(device.port().parity()).isEqualTo(Parity.ODD);
    assertThat(device.silenceLimit()).isEmpty();
    assertThat(device.rule())
        .isInstanceOfSatisfying(
            WhenSettled.class,
            rule -> {
              assertThat(rule.spread()).isEqualTo("0.4");
              assertThat(rule.agreeFor()).isEqualTo(Duration.ofMillis(1200));
              assertThat(rule.lightSpread()).isEqualTo(WhenSettled.BIRDS.lightSpread());
            });
  }

  @Test
  void namesHoldsTheFilesOfTheFolderAndThoseCarried() throws IOException {
    write(GOOD);

    assertThat(DeviceFiles.in(folder).names()).contains("mine", "two-letter-header").isSorted();
    assertThat(DeviceFiles.in(folder.resolve("none")).names())
        .isEqualTo(DeviceFiles.carried().names());
  }

  @Test
  void deviceTakesTheUsersFileBeforeTheCarriedOne() throws IOException {
    Files.writeString(folder.resolve("plain-grams.toml"), GOOD, StandardCharsets.UTF_8);

    assertThat(DeviceFiles.in(folder).device("plain-grams").title()).isEqualTo("test balance");
  }

  @Test
  void deviceNamesEveryMistakeWithItsPlace() throws IOException {
    write(
        """
        titel = "test balance"
        field = "weight"
        silence-limit-seconds = "ten"
        [port]
        baud = 4
        parity = "evn"
        [framing]
        ends-with = "CR LF"
        [[line]]
        is = "value"
        pattern = '(?<value>[0-9.+ (?<unit>g)'
        [[line]]
        is = "value"
        pattern = '(?<weight>[0-9]+)'
        [units]
        g = "gramme"
        [settling]
        when = "settled"
        spread = 0.4
        """);

    assertThat(mistakes())
        .containsExactly(
            "mine.toml:1:1: The key \"titel\" is unknown in the file; known are channel,"
                + " decimal-mark, field, framing, line, polling, port, sample, settling,"
                + " silence-limit-seconds, stability, status, title, units.",
            "mine.toml:1:1: In the file the key \"title\" is missing.",
            "mine.toml:2:1: \"field\" must be one of mass, wing.",
            "mine.toml:5:1: \"baud\" must be a whole number from 50 to 4000000.",
            "mine.toml:6:1: \"parity\" must be one of even, mark, none, odd, space.",
            "mine.toml:11:1: The pattern is not written rightly: Unclosed character class at"
                + " character 26 of it.",
            "mine.toml:12:1: This does not go together: the pattern has no group named value.",
            "mine.toml:16:1: \"g\" must be one of cm, g, in, kg, mg, mm.",
            "mine.toml:3:1: \"silence-limit-seconds\" must be a whole number from 1 to 3600.",
            "mine.toml:19:1: \"spread\" must be a text in quotation marks.");
  }

  @Test
  void deviceNamesMistakesOfTheNotationWithTheirPlace() throws IOException {
    write("title = \"x\nfield = 'mass'\n");

    assertThat(mistakes()).hasSize(1).allMatch(each -> each.startsWith("mine.toml:1:"));
  }

  @Test
  void deviceNamesASampleThatGivesSomethingElse() throws IOException {
    write(GOOD.replace("expect = '22.30 g'", "expect = '22.3 g'"));

    assertThat(mistakes())
        .containsExactly(
            "mine.toml:19:1: The sample line '22.30 g' should give '22.3 g' but gives '22.30 g'.");
  }

  @Test
  void deviceAsksForASample() throws IOException {
    write(GOOD.substring(0, GOOD.indexOf("[[sample]]")));

    assertThat(mistakes())
        .containsExactly(
            "mine.toml:1:1: The file needs at least one [[sample]] by which it can be checked.");
  }

  @Test
  void deviceRefusesUnitsThatCannotFillTheField() throws IOException {
    write(GOOD.replace("g = \"g\"", "g = \"mm\""));

    assertThat(mistakes())
        .containsExactly(
            "mine.toml:1:1: This does not go together: a unit of the instrument cannot fill the"
                + " field.");
  }

  @Test
  void deviceRefusesAFileThatIsNotUtf8() throws IOException {
    Files.write(folder.resolve("mine.toml"), new byte[] {'#', (byte) 0xE9, '\n'});

    assertThat(mistakes())
        .containsExactly("The device file mine.toml is not written in UTF-8; save it as UTF-8.");
  }

  @Test
  void deviceSaysThatThereIsNoSuchFile() {
    assertThat(mistakes()).hasSize(1).allMatch(each -> each.startsWith("There is no device file"));
    assertThatThrownBy(() -> DeviceFiles.carried().device("absent.toml"))
        .isInstanceOf(DeviceException.class)
        .hasMessage("There is no device file absent.toml; check its name.");
  }

  private void write(String text) throws IOException {
    Files.writeString(folder.resolve("mine.toml"), text, StandardCharsets.UTF_8);
  }

  private List<String> mistakes() {
    DeviceException thrown =
        catchThrowableOfType(DeviceException.class, () -> DeviceFiles.in(folder).device("mine"));
    return thrown.getMessage().lines().map(each -> each.replace(folder + "/", "")).toList();
  }
}
