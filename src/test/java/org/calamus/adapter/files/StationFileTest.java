package org.calamus.adapter.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.dialogue.Talk;
import org.calamus.core.form.CodeSet;
import org.calamus.port.KeepUtterances;
import org.calamus.port.SettingsException;
import org.calamus.port.StationSettings;
import org.calamus.port.ToneSettings;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StationFileTest {

  private static final ZoneId ZONE = ZoneId.of("UTC");

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("station.toml");
  }

  private StationSettings read(String text) throws IOException {
    Files.writeString(file, text);
    return new StationFile(file, ZONE).read();
  }

  @Test
  void readGivesTheUsualSettingsWhereThereIsNoFile() {
    StationSettings settings = new StationFile(file, ZONE).read();
    assertThat(settings.zone()).isEqualTo(ZONE);
    assertThat(settings.instruments()).isEmpty();
    assertThat(settings.microphone()).isEmpty();
  }

  @Test
  void readKeepsNothingThatIsSaidUnlessItIsAskedTo() throws IOException {
    assertThat(read("place = 'Fenwick Marsh'\n").keeping())
        .isEqualTo(new KeepUtterances(false, 500, false));
    assertThat(read("keep-utterances = true\nutterances-megabytes = 20\n").keeping())
        .isEqualTo(new KeepUtterances(true, 20, false));
    assertThat(read("forget-voices = true\n").keeping())
        .isEqualTo(new KeepUtterances(false, 500, true));
  }

  @Test
  void readTakesHowTheTonesSoundAndTheUsualOnesOtherwise() throws IOException {
    assertThat(read("place = 'Fenwick Marsh'\n").tones()).isEqualTo(new ToneSettings(true, 100));
    assertThat(read("tones = false\n").tones()).isEqualTo(new ToneSettings(false, 100));
    assertThat(read("tone-volume = 40\n").tones()).isEqualTo(new ToneSettings(true, 40));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tones = 'no'",
        "tone-volume = 0",
        "tone-volume = 101",
        "keep-utterances = 'yes'",
        "forget-voices = 1",
        "utterances-megabytes = 0",
        "utterances-megabytes = 'all'",
        "utterances-megabytes = 2000000"
      })
  void readRefusesWhatIsNoWayToKeepAndToSound(String line) {
    assertThatThrownBy(() -> read(line + "\n"))
        .isInstanceOfSatisfying(SettingsException.class, e -> assertThat(e.problems()).hasSize(1));
  }

  @Test
  void readTakesAllSettingsWithByteOrderMarkAndCarriageReturns() throws IOException {
    StationSettings settings =
        read(
            "\uFEFFplace = 'Fenwick Marsh'\r\nbander = 'QX'\r\nzone = 'America/New_York'\r\n"
                + "microphone = 'headset'\r\nvoice = 'flite -t'\r\n\r\n[[instrument]]\r\n"
                + "port = '/dev/ttyUSB0'\r\ndevice = 'two-letter-header'\r\n"
                + "[[instrument]]\r\nport = 'COM3'\r\ndevice = 'gauge-channel-a'\r\n");
    assertThat(settings)
        .isEqualTo(
            new StationSettings(
                "Fenwick Marsh",
                "QX",
                ZoneId.of("America/New_York"),
                Optional.of("headset"),
                Optional.of("flite -t"),
                java.util.List.of(
                    new StationSettings.InstrumentAt("/dev/ttyUSB0", "two-letter-header"),
                    new StationSettings.InstrumentAt("COM3", "gauge-channel-a"))));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          plaice = 'Fenwick Marsh'     | "plaice" is no setting; see the user guide.
          "my place" = 'x'             | "my place" is no setting; see the user guide.
          codes = 'bbl'                | "bbl" is no code set; write laboratory or euring.
          place = 7                    | place must be a text in quotes.
          place = '  '                 | place must be a text in quotes.
          zone = 'Fenwick'             | "Fenwick" is no time zone; write it as America/New_York.
          instrument = 'a balance'     | an instrument begins with a line [[instrument]], in double brackets.
          instrument = [ 'a balance' ] | an instrument has a port and a device.
          """)
  void readNamesFileAndLineOfAMistake(String line, String problem) {
    assertThatThrownBy(() -> read("# ours\n" + line + "\n"))
        .isInstanceOfSatisfying(
            SettingsException.class,
            e -> assertThat(e.problems()).containsExactly(file + ":2: " + problem));
  }

  @Test
  void readTakesTheCodeSetAndTheLaboratorysWhereNoneIsWritten() throws IOException {
    assertThat(read("codes = 'euring'\n").codes()).isEqualTo(CodeSet.EURING);
    assertThat(read("codes = 'laboratory'\n").codes()).isEqualTo(CodeSet.LABORATORY);
    assertThat(read("place = 'Fenwick Marsh'\n").codes()).isEqualTo(CodeSet.LABORATORY);
  }

  @Test
  void readNamesEveryMistakeOfAnInstrument() {
    assertThatThrownBy(
            () ->
                read(
                    "[[instrument]]\nprot = '/dev/ttyUSB0'\ndevice = 'x'\n"
                        + "[[instrument]]\nport = 5\ndevice = 'x'\n"))
        .isInstanceOfSatisfying(
            SettingsException.class,
            e ->
                assertThat(e.problems())
                    .containsExactly(
                        file
                            + ":2: \"prot\" is no setting of an instrument; it has a port and a"
                            + " device.",
                        file + ":1: an instrument needs a port and a device.",
                        file + ":5: port must be a text in quotes."));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          place = Fenwick
          place 'Fenwick'
          [[instrument]
          """)
  void readNamesFileAndLineOfWhatIsNoSetting(String line) {
    assertThatThrownBy(() -> read("# ours\n" + line + "\n"))
        .isInstanceOfSatisfying(
            SettingsException.class,
            e ->
                assertThat(e.problems())
                    .isNotEmpty()
                    .allSatisfy(p -> assertThat(p).startsWith(file + ":").contains("correct")));
  }

  @Test
  void readTakesHowTheStationWantsToBeListenedTo() throws IOException {
    assertThat(read("").heed()).isEqualTo(Heed.usual());
    assertThat(read("talk = 'key'\npause-after-minutes = 0\n").heed())
        .isEqualTo(new Heed(Talk.KEY, Duration.ZERO));
    assertThat(read("bystanders = true\n").heed().talk()).isEqualTo(Talk.KEY);
    assertThat(read("bystanders = true\ntalk = 'open'\n").heed().talk()).isEqualTo(Talk.OPEN);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          talk = 'shout'           | "shout" is no way to talk; write open or key.
          bystanders = 'yes'       | "bystanders" must be true or false, without quotation marks.
          pause-after-minutes = -1 | "pause-after-minutes" must be a whole number from 0 to 240.
          """)
  void readNamesAMistakeOfListening(String line, String problem) {
    assertThatThrownBy(() -> read(line + "\n"))
        .isInstanceOfSatisfying(
            SettingsException.class,
            wrong -> assertThat(wrong.problems()).containsExactly(file + ":1:1: " + problem));
  }

  @Test
  void readTakesTheLengthsOfNets() throws IOException {
    var protocol =
        read("nets = ['1', 'SP = south pond']\nnet-lengths = ['SP = 18', '1=6.5']\n").protocol();
    assertThat(protocol.netLengths())
        .containsOnly(Map.entry("SP", new BigDecimal("18")), Map.entry("1", new BigDecimal("6.5")));
    assertThat(read("nets = ['1']\n").protocol().netLengths()).isEmpty();
  }

  @Test
  void readTakesWhoWritesAndNobodyWhereThatIsLeftOut() throws IOException {
    assertThat(read("scribe = 'ZB'\n").protocol().scribe()).contains("ZB");
    assertThat(read("bander = 'QX'\n").protocol().scribe()).isEmpty();
    assertThatThrownBy(() -> read("scribe = 3\n")).isInstanceOf(SettingsException.class);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      textBlock =
          """
          ['1']      | "1" is not a net and its metres; write it as 'SP = 18'.
          ['1 = 0']  | "1 = 0" is not a net and its metres; write it as 'SP = 18'.
          ['1 = -3'] | "1 = -3" is not a net and its metres; write it as 'SP = 18'.
          ['2 = 12'] | "2" is not among the nets; name it there, too.
          """)
  void readNamesAMistakeOfANetsLength(String lengths, String problem) {
    assertThatThrownBy(() -> read("nets = ['1']\nnet-lengths = " + lengths + "\n"))
        .isInstanceOfSatisfying(
            SettingsException.class,
            wrong -> assertThat(wrong.problems()).singleElement().asString().endsWith(problem));
  }
}
