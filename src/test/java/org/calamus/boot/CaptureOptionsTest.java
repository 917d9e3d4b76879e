package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.dialogue.Talk;
import org.calamus.port.StationSettings;
import org.calamus.port.ToneSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class CaptureOptionsTest {

  private static final ToneSettings WRITTEN = new ToneSettings(true, 80);

  private static ToneSettings tones(String... arguments) {
    return CommandLine.populateCommand(new CaptureOptions(), arguments).tones(WRITTEN);
  }

  @Test
  void tonesAreTheStationsUnlessSomethingElseIsAskedFor() {
    assertThat(tones()).isEqualTo(WRITTEN);
    assertThat(tones("--tone-volume", "40")).isEqualTo(new ToneSettings(true, 40));
    assertThat(tones("--no-tones")).isEqualTo(new ToneSettings(false, 80));
  }

  private static final StationSettings STATION =
      new StationSettings(
          "Fenwick Marsh", "QX", ZoneOffset.UTC, Optional.empty(), Optional.empty(), List.of());

  private static StationSettings over(StationSettings written, String... arguments) {
    CaptureOptions options = new CaptureOptions();
    Cli.lineOf(options).parseArgs(arguments);
    return options.over(written);
  }

  @Test
  void whatIsNotAskedForIsTheStations() {
    StationSettings written = STATION.withProtocol(STATION.protocol().writtenBy(Optional.of("ZB")));
    assertThat(over(written)).isEqualTo(written);
  }

  @Test
  void placeAndPeopleAreThoseOfTheCommandLine() {
    StationSettings settings =
        over(STATION, "--place", "Low Wood", "--bander", "ZB", "--scribe", "QX");
    assertThat(settings.place()).isEqualTo("Low Wood");
    assertThat(settings.bander()).isEqualTo("ZB");
    assertThat(settings.protocol().scribe()).contains("QX");
  }

  @Test
  void talkIsTheStationsUnlessOneOfTheTwoWaysIsAskedFor() {
    assertThat(over(STATION).heed().talk()).isEqualTo(Talk.OPEN);
    assertThat(over(STATION, "--talk", "key").heed())
        .isEqualTo(new Heed(Talk.KEY, STATION.heed().pauseAfter()));
    CommandLine line = Cli.lineOf(new CaptureOptions());
    assertThatThrownBy(() -> line.parseArgs("--talk", "loud"))
        .isInstanceOf(CommandLine.ParameterException.class)
        .hasMessageContaining("OPEN, KEY");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "101", "-3"})
  void tonesRefusesAVolumeThatIsNone(String percent) {
    assertThatThrownBy(() -> tones("--tone-volume=" + percent))
        .isInstanceOf(Halt.class)
        .hasMessage("--tone-volume " + percent + " is not 1 to 100; --no-tones leaves them out.");
  }
}
