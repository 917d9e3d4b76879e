package org.calamus.boot;

import java.util.ArrayList;
import java.util.List;
import org.calamus.adapter.speaker.FreeTtsVoice;
import org.calamus.adapter.speaker.ProcessVoice;
import org.calamus.port.Clock;
import org.calamus.port.StationSettings;
import org.calamus.port.ToneSettings;
import org.calamus.port.Voice;

/** Chooses the voice that a station speaks with. */
final class Voices {

  private Voices() {}

  /** The station's own voice command, or else the built-in voice. */
  static Voice of(StationSettings settings, Clock clock) {
    ToneSettings tones = settings.tones();
    FreeTtsVoice.Settings how =
        FreeTtsVoice.Settings.usual().withTones(tones.isOn(), tones.percent() / 100.0);
    return settings
        .voiceCommand()
        .<Voice>map(command -> new ProcessVoice(words(command), clock, how))
        .orElseGet(() -> new FreeTtsVoice(clock, how));
  }

  /** The words of a voice command; the phrase goes where it says, or else behind it. */
  private static List<String> words(String command) {
    List<String> words = new ArrayList<>(List.of(command.strip().split("\\s+")));
    if (words.stream().skip(1).noneMatch(w -> w.contains(ProcessVoice.PLACE))) {
      words.add(ProcessVoice.PLACE);
    }
    return words;
  }
}
