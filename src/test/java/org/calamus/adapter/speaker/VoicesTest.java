package org.calamus.adapter.speaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.port.Voice;
import org.calamus.support.Outside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What every voice owes the engine: one beginning and one end for each phrase. */
@Timeout(30)
class VoicesTest {

  private static final FreeTtsVoice.Settings NO_TONES = new FreeTtsVoice.Settings(1, 150, false, 1);

  private final BlockingQueue<Event> events = new LinkedBlockingQueue<>();

  @TempDir Path folder;

  @Test
  void silentVoiceAnswersAtOnce() throws Exception {
    try (Voice voice = new SilentVoice(Instant::now)) {
      voice.start(events::add);
      voice.say("nine two");

      assertThat(kinds(3)).containsExactly("PartUp", "VoiceBegan", "VoiceEnded");
    }
  }

  @Test
  void silentVoiceTakesItsTimeWhenPaced() throws Exception {
    try (Voice voice = new SilentVoice(Instant::now, Duration.ofMillis(100))) {
      voice.start(events::add);
      voice.say("wing nine two");
      kinds(1);
      Event began = next();
      Event ended = next();

      assertThat(Duration.between(began.at(), ended.at())).isGreaterThan(Duration.ofMillis(290));
    }
  }

  @Test
  void silentVoiceIsCutOffByHushAndByTheNextPhrase() throws Exception {
    try (Voice voice = new SilentVoice(Instant::now, Duration.ofHours(1))) {
      voice.start(events::add);
      voice.say("one");
      voice.say("two");
      voice.hush();

      assertThat(kinds(5))
          .containsExactly("PartUp", "VoiceBegan", "VoiceEnded", "VoiceBegan", "VoiceEnded");
    }
  }

  @Test
  void processVoicePassesThePhraseAsOneArgument() throws Exception {
    String shell = Outside.program("sh").toString();
    Path out = folder.resolve("said");
    String phrase = "two words; $(touch " + folder.resolve("broken") + ") 'quoted\" | * -x";
    try (Voice voice =
        new ProcessVoice(
            List.of(shell, "-c", "printf '%s|%s' \"$#\" \"$1\" > " + out, "sh", "{}"),
            Instant::now,
            NO_TONES)) {
      voice.start(events::add);
      voice.say(phrase);

      assertThat(kinds(3)).containsExactly("PartUp", "VoiceBegan", "VoiceEnded");
      assertThat(out).hasContent("1|" + phrase);
      assertThat(Files.exists(folder.resolve("broken"))).isFalse();
    }
  }

  @Test
  void processVoiceIsCutOffByHush() throws Exception {
    String sleep = Outside.program("sleep").toString();
    try (Voice voice = new ProcessVoice(List.of(sleep, "{}"), Instant::now, NO_TONES)) {
      voice.start(events::add);
      voice.say("60");
      kinds(2);
      long start = System.nanoTime();
      voice.hush();

      assertThat(kinds(1)).containsExactly("VoiceEnded");
      assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofMillis(500));
      // cut off is not failed
      voice.say("0");
      assertThat(kinds(2)).containsExactly("VoiceBegan", "VoiceEnded");
    }
  }

  @Test
  void processVoiceIsDownWhenTheProgramIsMissing() throws Exception {
    try (Voice voice = new ProcessVoice(List.of("no-such-voice", "{}"), Instant::now, NO_TONES)) {
      voice.start(events::add);
      assertThat(next())
          .isInstanceOfSatisfying(
              Event.PartDown.class,
              down -> {
                assertThat(down.part()).isEqualTo(Part.VOICE);
                assertThat(down.sentence())
                    .isEqualTo(
                        "The voice program no-such-voice cannot be started; install it or choose"
                            + " another voice.");
              });
      voice.say("nine");
      assertThat(kinds(2)).containsExactly("VoiceBegan", "VoiceEnded");
    }
  }

  @Test
  void processVoiceIsDownWhenTheProgramFailsAndUpWhenItWorksAgain() throws Exception {
    String shell = Outside.program("sh").toString();
    try (Voice voice = new ProcessVoice(List.of(shell, "-c", "{}"), Instant::now, NO_TONES)) {
      voice.start(events::add);
      voice.say("exit 3");
      assertThat(kinds(4)).containsExactly("PartUp", "VoiceBegan", "PartDown", "VoiceEnded");
      voice.say("exit 3");
      assertThat(kinds(2)).containsExactly("VoiceBegan", "VoiceEnded");
      voice.say("exit 0");
      assertThat(kinds(3)).containsExactly("VoiceBegan", "PartUp", "VoiceEnded");
    }
  }

  @Test
  void processVoiceRefusesACommandWithoutAPlaceForThePhrase() {
    assertThatThrownBy(() -> new ProcessVoice(List.of("flite"), Instant::now, NO_TONES))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("{}");
  }

  private Event next() throws InterruptedException {
    Event event = events.poll(10, TimeUnit.SECONDS);
    assertThat(event).as("an event").isNotNull();
    return event;
  }

  private List<String> kinds(int count) throws InterruptedException {
    List<String> kinds = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      kinds.add(next().getClass().getSimpleName());
    }
    return kinds;
  }
}
