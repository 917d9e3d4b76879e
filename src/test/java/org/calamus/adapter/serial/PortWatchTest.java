package org.calamus.adapter.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.adapter.files.DeviceFiles;
import org.calamus.adapter.serial.SerialInstruments.Connection;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Event.PartDown;
import org.calamus.core.dialogue.Event.PartUp;
import org.calamus.core.dialogue.Event.ReadingArrived;
import org.calamus.core.dialogue.Part;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The watch over a port that the test plays. */
class PortWatchTest {

  private static final Instant BEGIN = Instant.parse("2026-05-02T05:30:00Z");
  private static final String LINE = "ST,+00022.3  g\r\n";

  private final LinkedBlockingQueue<Event> events = new LinkedBlockingQueue<>();
  private final AtomicReference<Instant> now = new AtomicReference<>(BEGIN);
  private final PlayedWire wire = new PlayedWire();
  private final SerialInstruments instruments =
      new SerialInstruments(
          List.of(new Connection("port1", DeviceFiles.carried().device("two-letter-header"))),
          now::get,
          connection -> wire);

  @AfterEach
  void close() {
    wire.closing.countDown();
    instruments.close();
  }

  @Test
  void startPostsReadingsWithTheTimeOfTheClock() throws InterruptedException {
    instruments.start(events::add);
    assertThat(next())
        .isEqualTo(new PartUp(BEGIN, Part.SCALE, "two-letter-header", Optional.of("port1")));

    now.set(BEGIN.plusMillis(100));
    wire.send(LINE);

    assertThat(next())
        .isInstanceOfSatisfying(
            ReadingArrived.class,
            arrived -> {
              assertThat(arrived.at()).isEqualTo(BEGIN.plusMillis(100));
              assertThat(arrived.device()).isEqualTo("two-letter-header");
              assertThat(arrived.reading().amount()).isEqualTo("22.3");
            });
  }

  @Test
  void silenceIsReportedOnceAndEndsWithAReading() throws InterruptedException {
    instruments.start(events::add);
    next();
    wire.send(LINE);
    next();

    now.set(BEGIN.plusSeconds(10));
    wire.send("");
    wire.send("");
    now.set(BEGIN.plusMillis(10_001));

    assertThat(next())
        .isInstanceOfSatisfying(
            PartDown.class,
            down ->
                assertThat(down.sentence())
                    .isEqualTo(
                        "The instrument on port1 says nothing; switch it on, check its cable and"
                            + " that it sends by itself."));
    now.set(BEGIN.plusSeconds(60));
    wire.send(LINE);
    assertThat(next()).isInstanceOf(PartUp.class);
    assertThat(next()).isInstanceOf(ReadingArrived.class);
  }

  @Test
  void linesOfAnotherFormatAreReportedAsSuch() throws InterruptedException {
    instruments.start(events::add);
    next();
    wire.send("22.3 g\r\n");
    now.set(BEGIN.plusSeconds(11));

    assertThat(((PartDown) next()).sentence())
        .isEqualTo(
            "The instrument on port1 sends what the device file two-letter-header does not"
                + " describe; check the speed of the port and the device file.");
  }

  @Test
  void overloadIsReportedOnceUntilTheNextReading() throws InterruptedException {
    instruments.start(events::add);
    next();
    wire.send("OL,+9999999E+19\r\nOL,+9999999E+19\r\n");
    wire.send(LINE);

    assertThat(((PartDown) next()).sentence())
        .isEqualTo("The balance shows overload; take the load off.");
    assertThat(next()).isInstanceOf(PartUp.class);
    assertThat(next()).isInstanceOf(ReadingArrived.class);
  }

  @Test
  void halfALineBeforeALossIsNoPartOfTheLineAfterIt() throws InterruptedException {
    instruments.start(events::add);
    next();
    wire.send("ST,+0002");
    wire.lose();
    assertThat(((PartDown) next()).sentence())
        .isEqualTo(
            "The instrument on port1 is gone; plug it in again, it will be found by itself.");
    assertThat(next()).isInstanceOf(PartUp.class);

    wire.send("1.4  g\r\n" + LINE);

    assertThat(((ReadingArrived) next()).reading().amount()).isEqualTo("22.3");
  }

  @Test
  void aRefusalIsReportedOnceHoweverOftenThePortIsTried() throws InterruptedException {
    wire.refusals.add("No.");
    wire.refusals.add("No.");
    instruments.start(events::add);

    assertThat(((PartDown) next()).sentence()).isEqualTo("No.");
    assertThat(next()).isInstanceOf(PartUp.class);
  }

  @Test
  void closeEndsThoughThePortHangsInClosing() throws InterruptedException {
    wire.hangsInClosing = true;
    instruments.start(events::add);
    next();

    long start = System.nanoTime();
    instruments.close();

    assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(4));
    assertThat(wire.closing.getCount()).isEqualTo(1); // it does hang still
  }

  private Event next() throws InterruptedException {
    Event event = events.poll(10, TimeUnit.SECONDS);
    assertThat(event).as("an event within ten seconds").isNotNull();
    return event;
  }

  /** A port whose bytes, loss and refusals the test plays. */
  private static final class PlayedWire implements Wire {
    private static final String LOSS = "lost";

    private final LinkedBlockingQueue<String> sent = new LinkedBlockingQueue<>();
    private final LinkedBlockingQueue<String> refusals = new LinkedBlockingQueue<>();
    private final CountDownLatch closing = new CountDownLatch(1);
    private volatile boolean hangsInClosing;

    void send(String bytes) {
      sent.add(bytes);
    }

    void lose() {
      sent.add(LOSS);
    }

    @Override
    public Optional<String> open() {
      return Optional.ofNullable(refusals.poll());
    }

    @Override
    public byte[] read() throws GoneException {
      try {
        Optional<String> next = Optional.ofNullable(sent.poll(20, TimeUnit.MILLISECONDS));
        if (next.filter(LOSS::equals).isPresent()) {
          throw new GoneException();
        }
        return next.orElse("").getBytes(StandardCharsets.ISO_8859_1);
      } catch (InterruptedException e) {
        throw new GoneException();
      }
    }

    @Override
    public void write(byte[] bytes) {
      throw new AssertionError("this instrument is not asked");
    }

    @Override
    public void close() {
      if (!hangsInClosing) {
        return;
      }
      try {
        closing.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
