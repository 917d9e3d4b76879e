package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.port.StationSettings;
import org.calamus.port.Voice;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VoicesTest {

  @ParameterizedTest
  @ValueSource(strings = {"no-such-voice -t", "no-such-voice", "no-such-voice {} -x"})
  void ofSpeaksWithTheCommandOfTheStation(String command) throws InterruptedException {
    StationSettings settings =
        new StationSettings(
            "Fenwick Marsh",
            "QX",
            ZoneOffset.UTC,
            Optional.empty(),
            Optional.of(command),
            List.of());
    BlockingQueue<Event> events = new LinkedBlockingQueue<>();
    try (Voice voice = Voices.of(settings, () -> Instant.EPOCH)) {
      voice.start(events::add);
      assertThat(events.poll(10, TimeUnit.SECONDS))
          .isInstanceOfSatisfying(
              Event.PartDown.class,
              down -> assertThat(down.sentence()).contains("no-such-voice cannot be started"));
    }
  }
}
