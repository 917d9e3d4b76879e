package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.calamus.core.dialogue.Talk;
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

  @Test
  void talkIsTheStationsUnlessOneOfTheTwoWaysIsAskedFor() {
    assertThat(new CaptureOptions().talk()).isEmpty();
    CaptureOptions options = new CaptureOptions();
    CommandLine line = new CommandLine(options).setCaseInsensitiveEnumValuesAllowed(true);
    line.parseArgs("--talk", "key");
    assertThat(options.talk()).contains(Talk.KEY);
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
