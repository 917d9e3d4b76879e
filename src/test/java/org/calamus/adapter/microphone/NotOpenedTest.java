package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Optional;
import javax.sound.sampled.LineUnavailableException;
import org.junit.jupiter.api.Test;

class NotOpenedTest {

  private static final String REFUSED =
      "The microphone cannot be opened, as when another program is using it; close calls and"
          + " recorders, or plug it in again.";

  private static String sentence(Exception cause) {
    return NotOpened.because(cause, Optional.empty()).getMessage();
  }

  @Test
  void becauseNamesTheProgramThatHoldsTheMicrophone() {
    Exception cause = new LineUnavailableException("line with format not supported");
    assertThat(NotOpened.because(cause, Optional.of("recorder")))
        .hasMessage(
            "Another program, recorder, is using the microphone; close it there, or name another"
                + " microphone in station.toml.")
        .hasCause(cause);
  }

  @Test
  void becauseTellsARefusedLineFromOneThatIsNotThere() {
    assertThat(sentence(new LineUnavailableException())).isEqualTo(REFUSED);
    assertThat(sentence(new IllegalArgumentException(new IOException("Device or resource busy"))))
        .isEqualTo(REFUSED);
    assertThat(sentence(new IllegalArgumentException("No line matching")))
        .isEqualTo("No microphone can be opened; plug one in, or close the program that uses it.");
  }
}
