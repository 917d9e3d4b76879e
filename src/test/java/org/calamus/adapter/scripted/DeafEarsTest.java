package org.calamus.adapter.scripted;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.junit.jupiter.api.Test;

class DeafEarsTest {

  private static final Instant NOW = Instant.parse("2026-03-14T06:30:00Z");

  private final List<Event> events = new ArrayList<>();

  @Test
  void memoFailsWithASentence() {
    DeafEars ears = new DeafEars(() -> NOW);
    ears.start(events::add);
    ears.recordMemo(
        () -> {
          throw new AssertionError("nothing can be taken down");
        },
        Duration.ofSeconds(30));
    ears.stopMemo();
    assertThat(events)
        .containsExactly(new Event.MemoFailed(NOW, "There is no microphone: type the note."));
  }

  @Test
  void startSaysWhyTheyCannotHear() {
    new DeafEars(() -> NOW, "There is no model; the keypad works.").start(events::add);
    assertThat(events)
        .containsExactly(
            new Event.PartDown(NOW, Part.EARS, "There is no model; the keypad works."));
  }

  @Test
  void startSaysNothingWhereTheyAreOffAsAsked() {
    new DeafEars(() -> NOW).start(events::add);
    assertThat(events).isEmpty();
  }
}
