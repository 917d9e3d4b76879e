package org.calamus.adapter.serial;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.calamus.core.instrument.DeviceDescription;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Instruments;

/**
 * Instruments on serial ports, each read on a thread of its own. Nothing but readings of whole
 * lines is ever posted; a line that broke off is dropped.
 *
 * <p>{@code start} and {@code close} are called from one thread, once each.
 */
public final class SerialInstruments implements Instruments {

  /** How long closing waits for the ports; the library is known to hang in closing one. */
  private static final Duration CLOSING_LIMIT = Duration.ofSeconds(2);

  private final List<Connection> connections;
  private final Clock clock;
  private final Function<Connection, Wire> wires;
  private final List<PortWatch> watches = new ArrayList<>();
  private final List<Thread> threads = new ArrayList<>();

  /**
   * Instruments that are read from {@link #start} on.
   *
   * @param connections which instrument is on which port
   * @param clock stamps the events
   */
  public SerialInstruments(List<Connection> connections, Clock clock) {
    this(
        connections,
        clock,
        connection -> new SerialWire(connection.path(), connection.device().port()));
  }

  SerialInstruments(List<Connection> connections, Clock clock, Function<Connection, Wire> wires) {
    this.connections = List.copyOf(connections);
    this.clock = Objects.requireNonNull(clock);
    this.wires = wires;
  }

  /**
   * An instrument on a port.
   *
   * @param path the port, such as {@code /dev/ttyUSB0} or {@code COM3}; never blank
   * @param device the instrument
   */
  public record Connection(String path, DeviceDescription device) {
    /** Checks that there is a path. */
    public Connection {
      if (path.isBlank()) {
        throw new IllegalArgumentException("a connection needs the path of a port");
      }
      Objects.requireNonNull(device);
    }
  }

  /** The ports that the system names, one line each: the path and what the system calls it. */
  public static List<String> ports() {
    return SerialWire.listing();
  }

  @Override
  public void start(EventSink sink) {
    for (Connection connection : connections) {
      PortWatch watch =
          new PortWatch(
              connection.path(), connection.device(), wires.apply(connection), clock, sink);
      Thread thread = new Thread(watch, "serial " + connection.path());
      thread.setDaemon(true);
      watches.add(watch);
      threads.add(thread);
      thread.start();
    }
  }

  @Override
  public void close() {
    watches.forEach(PortWatch::stop);
    long deadline = System.nanoTime() + CLOSING_LIMIT.toNanos();
    for (Thread thread : threads) {
      long left = Duration.ofNanos(deadline - System.nanoTime()).toMillis();
      try {
        thread.join(Math.max(1, left));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }
}
