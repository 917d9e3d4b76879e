package org.calamus.adapter.serial;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.instrument.Decoded;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.core.instrument.InstrumentDecoder;
import org.calamus.core.instrument.Polling;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;

/**
 * Reads one instrument for as long as the session lasts: opens its port, posts its readings, opens
 * the port again when it was lost. Runs on a thread of its own; {@link #stop} may come from any.
 */
final class PortWatch implements Runnable {

  /** Shorter than a user takes to put a plug back, long enough for the system to name the port. */
  private static final Duration PAUSE_BEFORE_RETRY = Duration.ofMillis(500);

  private final String path;
  private final DeviceDescription device;
  private final Wire wire;
  private final Clock clock;
  private final EventSink sink;
  private final CountDownLatch stopped = new CountDownLatch(1);
  private final Health health;

  PortWatch(String path, DeviceDescription device, Wire wire, Clock clock, EventSink sink) {
    this.path = path;
    this.device = device;
    this.wire = wire;
    this.clock = clock;
    this.sink = sink;
    this.health = new Health();
  }

  @Override
  public void run() {
    while (!isStopped()) {
      Optional<String> refusal = wire.open();
      if (refusal.isPresent()) {
        health.down(refusal.get());
      } else {
        // a decoder of its own for each opening: what was half received before is no part of a line
        Reception reception = new Reception(clock.now());
        health.up();
        readUntilLost(reception);
        wire.close();
      }
      pause();
    }
  }

  /** Ends the reading; the thread ends after the read it is in. */
  void stop() {
    stopped.countDown();
  }

  private boolean isStopped() {
    return stopped.getCount() == 0;
  }

  private void pause() {
    try {
      if (stopped.await(PAUSE_BEFORE_RETRY.toMillis(), TimeUnit.MILLISECONDS)) {
        return;
      }
    } catch (InterruptedException e) {
      stop();
    }
  }

  private void readUntilLost(Reception reception) {
    try {
      while (!isStopped()) {
        reception.next();
      }
    } catch (Wire.GoneException e) {
      if (!isStopped()) {
        health.down(
            "The instrument on "
                + path
                + " is gone; plug it in again, it will be found by itself.");
      }
    }
  }

  /** What happens between an opening of the port and its loss. */
  private final class Reception {
    private InstrumentDecoder decoder;
    private Instant lastUnderstood;
    private Instant nextRequest;
    private String lastNoise = "";

    Reception(Instant opened) {
      decoder = InstrumentDecoder.opened(device, opened);
      lastUnderstood = opened;
      nextRequest = opened;
    }

    void next() throws Wire.GoneException {
      if (device.polling().isPresent()) {
        ask(device.polling().get());
      }
      byte[] bytes = wire.read();
      Instant now = clock.now();
      InstrumentDecoder.Step step = decoder.step(bytes, now);
      decoder = step.next();
      step.decoded().forEach(each -> post(each, now));
      checkSilence(now);
    }

    private void ask(Polling polling) throws Wire.GoneException {
      Instant now = clock.now();
      if (now.isBefore(nextRequest)) {
        return;
      }
      wire.write(polling.request().getBytes(StandardCharsets.US_ASCII));
      nextRequest = now.plus(polling.interval());
    }

    private void post(Decoded decoded, Instant now) {
      if (decoded instanceof Decoded.Measured measured) {
        lastUnderstood = now;
        health.up();
        sink.post(new Event.ReadingArrived(now, path, device.name(), measured.reading()));
      } else if (decoded instanceof Decoded.Fault fault) {
        lastUnderstood = now;
        health.down(fault.sentence());
      } else if (decoded instanceof Decoded.Noise noise) {
        lastNoise = noise.line();
      } else {
        throw new AssertionError(decoded);
      }
    }

    private void checkSilence(Instant now) {
      Optional<Duration> limit = device.silenceLimit();
      if (limit.isEmpty() || !lastUnderstood.plus(limit.get()).isBefore(now)) {
        return;
      }
      health.down(
          lastNoise.isEmpty()
              ? "The instrument on "
                  + path
                  + " says nothing; switch it on, check its cable and that it sends by itself."
              : "The instrument on "
                  + path
                  + " sends what the device file "
                  + device.name()
                  + " does not describe; check the speed of the port and the device file.");
    }
  }

  /** What was last said of the instrument, so that nothing is said twice. */
  private final class Health {
    private String said = "";
    private boolean isUp;

    void up() {
      if (!isUp) {
        isUp = true;
        said = "";
        sink.post(new Event.PartUp(clock.now(), Part.SCALE, device.name(), Optional.of(path)));
      }
    }

    void down(String sentence) {
      if (!sentence.equals(said)) {
        isUp = false;
        said = sentence;
        sink.post(new Event.PartDown(clock.now(), Part.SCALE, sentence, Optional.of(path)));
      }
    }
  }
}
