package org.calamus.adapter.scripted;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.adapter.files.DeviceFiles;
import org.calamus.adapter.scripted.PlayedInstruments.Pace;
import org.calamus.adapter.scripted.PlayedInstruments.Recording;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Event.ReadingArrived;
import org.calamus.core.dialogue.Part;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.Settled;
import org.calamus.core.instrument.Settled.How;
import org.calamus.core.instrument.Weighing;
import org.calamus.port.Devices.DeviceException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlayedInstrumentsTest {

  private static final Instant BEGIN = Instant.parse("2026-05-02T05:30:00Z");

  private final DeviceDescription device = DeviceFiles.carried().device("two-letter-header");

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          bird-22-3, 22.3, MARKED_STABLE
          bird-11-4, 11.4, READINGS_AGREED
          bird-30-1, 30.1, MARKED_STABLE
          """)
  void playOfADemonstrationSettlesOneMass(String name, String amount, How how) throws IOException {
    List<Event> events = played(recording(name));

    List<Settled> settled = settled(events);
    assertThat(settled).hasSize(1);
    assertThat(settled.get(0).value().text()).isEqualTo(amount);
    assertThat(settled.get(0).how()).isEqualTo(how);
    assertThat(recording(name).length()).isBetween(Duration.ofSeconds(3), Duration.ofSeconds(6));
  }

  @Test
  void playOfAllThreeInARowSettlesThreeMasses() throws IOException {
    List<Event> events =
        played(recording("bird-22-3"), recording("bird-11-4"), recording("bird-30-1"));

    assertThat(settled(events).stream().map(each -> each.value().text()))
        .containsExactly("22.3", "11.4", "30.1");
    assertThat(events).isSortedAccordingTo(Comparator.comparing(Event::at));
  }

  @Test
  void playAtOnceStampsTheTimesOfTheRecording() {
    List<Event> events =
        played(
            Recording.parse(
                "test",
                List.of(
                    "0 \"ST,+00022.3  g\\r\\nST,+0002\"",
                    "250 \"2.4  g\\x0D\\x0a\"",
                    "# over",
                    "400 \"OL,+9999999E+19\\r\\n\"",
                    "500 \"ST,+0001\"")));

    assertThat(events.stream().map(Event::at))
        .containsExactly(BEGIN, BEGIN, BEGIN.plusMillis(250), BEGIN.plusMillis(400));
    assertThat(events.get(0))
        .isEqualTo(
            new Event.PartUp(
                BEGIN, Part.SCALE, "two-letter-header", Optional.of("two-letter-header")));
    assertThat(((ReadingArrived) events.get(2)).reading().amount()).isEqualTo("22.4");
    assertThat(events.get(3)).isInstanceOf(Event.PartDown.class);
  }

  @Test
  void playJoinsTheHalvesOfALineOnlyAcrossAShortPause() {
    List<Event> whole = played(halves(500));
    List<Event> broken = played(halves(501));

    assertThat(whole).hasSize(2);
    assertThat(((ReadingArrived) whole.get(1)).reading().amount()).isEqualTo("21.4");
    assertThat(broken).hasSize(1); // else the front of 22.3 and the back of 11.4 made 21.4
  }

  private static Recording halves(int pause) {
    return Recording.parse("test", List.of("0 \"ST,+0002\"", pause + " \"1.4  g\\r\\n\""));
  }

  @Test
  void playInRealTimeKeepsThePaceAndEndsWithClose() throws InterruptedException {
    LinkedBlockingQueue<Event> events = new LinkedBlockingQueue<>();
    PlayedInstruments played = new PlayedInstruments(device, () -> BEGIN, Pace.REAL_TIME);
    played.start(events::add);
    long start = System.nanoTime();
    played.play(
        Recording.parse(
            "test", List.of("150 \"ST,+00022.3  g\\r\\n\"", "3600000 \"ST,+00022.3  g\\r\\n\"")));

    assertThat(events.poll(5, TimeUnit.SECONDS)).isInstanceOf(Event.PartUp.class);
    assertThat(events.poll(5, TimeUnit.SECONDS)).isInstanceOf(ReadingArrived.class);
    assertThat(System.nanoTime() - start).isGreaterThanOrEqualTo(150_000_000L);
    played.close();
    assertThat(System.nanoTime() - start).isLessThan(10_000_000_000L);
    assertThat(events).isEmpty();
  }

  @Test
  void parseNamesEveryMistakeWithItsPlace() {
    assertThatThrownBy(
            () ->
                Recording.parse(
                    "my.bytes.txt",
                    List.of(
                        "100 \"a\"", "50 \"b\"", "soon \"c\"", "200 \"d\\q\"", "300 \"\u00E9\"")))
        .isInstanceOf(DeviceException.class)
        .hasMessage(
            """
            my.bytes.txt:2:1: The times must not go back.
            my.bytes.txt:3:1: A line is a number of milliseconds and a text in quotation marks.
            my.bytes.txt:4:7: Here only ASCII and \\r, \\n, \\\\, \\" and \\xNN may stand.
            my.bytes.txt:5:6: Here only ASCII and \\r, \\n, \\\\, \\" and \\xNN may stand.""");
  }

  private List<Event> played(Recording... recordings) {
    List<Event> events = new ArrayList<>();
    try (PlayedInstruments played = new PlayedInstruments(device, () -> BEGIN, Pace.AT_ONCE)) {
      played.start(events::add);
      for (Recording recording : recordings) {
        played.play(recording);
      }
    }
    return events;
  }

  private List<Settled> settled(List<Event> events) {
    Weighing weighing = Weighing.idle(device.rule());
    List<Settled> settled = new ArrayList<>();
    for (Event event : events) {
      if (event instanceof ReadingArrived arrived) {
        weighing = weighing.step(arrived.reading(), arrived.at());
        weighing.settled().ifPresent(settled::add);
      }
    }
    return settled;
  }

  private static Recording recording(String name) throws IOException {
    Path file = Path.of("demo-data", "scale", name + ".bytes.txt");
    return Recording.parse(file.toString(), Files.readAllLines(file, StandardCharsets.UTF_8));
  }
}
