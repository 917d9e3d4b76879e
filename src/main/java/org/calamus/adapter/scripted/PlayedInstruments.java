package org.calamus.adapter.scripted;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.instrument.Decoded;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.InstrumentDecoder;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Instruments;

/**
 * An instrument whose bytes come from recordings, through the same decoder as those of a port.
 *
 * <pre>{@code
 * PlayedInstruments scale = new PlayedInstruments(device, clock, Pace.REAL_TIME);
 * scale.start(sink);
 * scale.play(Recording.parse("nuthatch.bytes.txt", lines));
 * }</pre>
 *
 * <p>{@code start}, {@code play} and {@code close} are called from one thread.
 */
public final class PlayedInstruments implements Instruments {

  private final DeviceDescription device;
  private final Clock clock;
  private final Pace pace;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final ExecutorService player =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "played instrument");
            thread.setDaemon(true);
            return thread;
          });
  private Optional<EventSink> sink = Optional.empty();
  private Instant free = Instant.MIN;

  /** How fast recordings are played. */
  public enum Pace {
    /** As they were recorded, on a thread of its own; {@code play} returns at once. */
    REAL_TIME,
    /** At once, before {@code play} returns. The events carry the times of the recording. */
    AT_ONCE
  }

  /**
   * An instrument that says nothing until something is played.
   *
   * @param device the instrument that was recorded
   * @param clock tells when a recording begins
   * @param pace how fast to play
   */
  public PlayedInstruments(DeviceDescription device, Clock clock, Pace pace) {
    this.device = Objects.requireNonNull(device);
    this.clock = Objects.requireNonNull(clock);
    this.pace = Objects.requireNonNull(pace);
  }

  @Override
  public void start(EventSink events) {
    sink = Optional.of(events);
    events.post(
        new Event.PartUp(clock.now(), Part.SCALE, device.name(), Optional.of(device.name())));
  }

  /**
   * Plays a recording after those that are still being played. Its times count from now, or from
   * the end of the one before.
   *
   * @throws IllegalStateException before {@link #start}
   */
  public void play(Recording recording) {
    EventSink events = sink.orElseThrow(() -> new IllegalStateException("not started"));
    Instant now = clock.now();
    Instant begin = now.isAfter(free) ? now : free;
    free = begin.plus(recording.length());
    if (pace == Pace.AT_ONCE) {
      decode(recording, begin, events);
    } else {
      player.execute(() -> playInTime(recording, begin, events));
    }
  }

  @Override
  public void close() {
    closed.countDown();
    player.shutdown();
    try {
      player.awaitTermination(1, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void decode(Recording recording, Instant begin, EventSink events) {
    InstrumentDecoder decoder = InstrumentDecoder.opened(device, begin);
    for (Recording.Portion portion : recording.portions()) {
      decoder = post(decoder, portion, begin, events);
    }
  }

  private void playInTime(Recording recording, Instant begin, EventSink events) {
    InstrumentDecoder decoder = InstrumentDecoder.opened(device, begin);
    long start = System.nanoTime();
    for (Recording.Portion portion : recording.portions()) {
      long wait = portion.after().toNanos() - (System.nanoTime() - start);
      try {
        if (closed.await(Math.max(0, wait), TimeUnit.NANOSECONDS)) {
          return;
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
      decoder = post(decoder, portion, begin, events);
    }
  }

  private InstrumentDecoder post(
      InstrumentDecoder decoder, Recording.Portion portion, Instant begin, EventSink events) {
    Instant at = begin.plus(portion.after());
    InstrumentDecoder.Step step = decoder.step(portion.bytes(), at);
    for (Decoded each : step.decoded()) {
      if (each instanceof Decoded.Measured measured) {
        events.post(new Event.ReadingArrived(at, device.name(), device.name(), measured.reading()));
      } else if (each instanceof Decoded.Fault fault) {
        events.post(
            new Event.PartDown(at, Part.SCALE, fault.sentence(), Optional.of(device.name())));
      }
    }
    return step.next();
  }

  /**
   * What an instrument sent, with the times at which it came.
   *
   * @param portions the bytes in portions, in the order of their times
   */
  public record Recording(List<Portion> portions) {

    /** Copies the list. */
    public Recording {
      portions = List.copyOf(portions);
    }

    /**
     * Reads a recording. Each line is a number of milliseconds and a text in double quotation
     * marks, in which {@code \r}, {@code \n}, {@code \\}, {@code \"} and {@code \xNN} stand for
     * single bytes; {@code #} begins a comment line.
     *
     * @param name the name of the file, for the messages
     * @param lines its lines
     * @throws org.calamus.port.Devices.DeviceException with one sentence for every mistake
     */
    public static Recording parse(String name, List<String> lines) {
      return new RecordingParser(name).parse(lines);
    }

    /** The time of the last portion. */
    Duration length() {
      return portions.isEmpty() ? Duration.ZERO : portions.get(portions.size() - 1).after();
    }

    /**
     * Bytes that came together.
     *
     * @param after how long after the beginning
     * @param bytes the bytes
     */
    public record Portion(Duration after, byte[] bytes) {
      /** Copies the bytes. */
      public Portion {
        Objects.requireNonNull(after);
        bytes = bytes.clone();
      }

      @Override
      public byte[] bytes() {
        return bytes.clone();
      }
    }
  }
}
