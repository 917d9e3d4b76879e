package org.calamus.adapter.microphone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.calamus.port.AudioSource;
import org.junit.jupiter.api.Test;

class MicrophoneSourceTest {

  @Test
  void openSaysWhatToDoWhenNoCardHasTheName() {
    MicrophoneSource source = new MicrophoneSource("no such card");

    assertThatThrownBy(source::open)
        .isInstanceOf(AudioSource.AudioException.class)
        .hasMessage("There is no microphone named no such card; check its name in the settings.");
  }

  @Test
  void readEndsWhenItWasNeverOpened() {
    assertThat(new MicrophoneSource().read()).isEqualTo(new AudioSource.Ended());
  }

  @Test
  void mixTakesTheMeanWhenThereAreTwoChannels() {
    byte[] pcm = {100, 0, 0, 0, (byte) 0xff, 0x7f, (byte) 0xff, 0x7f, 0, (byte) 0x80, 2, 0, 9};

    assertThat(PcmMono.mix(pcm, pcm.length, 2)).containsExactly(50, 32_767, -16_383);
  }
}
