package org.calamus.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.calamus.adapter.scripted.DeafEars;
import org.calamus.core.dialogue.Event;
import org.calamus.port.Ears;
import org.calamus.port.Memos;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class LateEarsTest {

  private static final Instant NOW = Instant.parse("2026-03-14T06:30:00Z");
  private static final Memos.Place NOWHERE =
      () -> {
        throw new AssertionError("there is no sound to take down");
      };

  private final BlockingQueue<Event> events = new LinkedBlockingQueue<>();

  @Test
  void memoIsRefusedUntilThereAreEarsAndThenHandedOn() throws InterruptedException {
    CountDownLatch made = new CountDownLatch(1);
    try (Ears late = new LateEars(() -> madeAfter(made), () -> NOW)) {
      late.start(events::add);
      late.recordMemo(NOWHERE, Duration.ofSeconds(30));
      assertThat(events.poll(10, TimeUnit.SECONDS))
          .isEqualTo(
              new Event.MemoFailed(
                  NOW, "The microphone is not ready: type the note, or say it in a moment."));
      made.countDown();
      assertThat(events.poll(10, TimeUnit.SECONDS)).isInstanceOf(Event.PartDown.class);
      late.recordMemo(NOWHERE, Duration.ofSeconds(30));
      assertThat(events.poll(10, TimeUnit.SECONDS))
          .isEqualTo(new Event.MemoFailed(NOW, "There is no microphone: type the note."));
    }
  }

  private static Ears madeAfter(CountDownLatch latch) {
    try {
      assertThat(latch.await(20, TimeUnit.SECONDS)).isTrue();
      return new DeafEars(() -> NOW, "Deaf now.");
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
