package org.calamus.adapter.plain;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReference;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.View;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Screen;

/**
 * The console as lines of text, one for each thing that a reader needs to know, each with the local
 * time in front of it.
 *
 * <pre>{@code
 * 08:41:07 asked: Wing chord, mm
 * 08:41:09 taken: Wing chord, mm 92 (said)
 * }</pre>
 *
 * <p>The level and the timer print nothing. Keys may come from a stream: each character is a key,
 * the end of a line is Enter. {@link #show} may be called from any thread; it writes before it
 * returns and so waits where the reader of a pipe does not read. Where the output fails, {@code
 * Stopping} is posted once.
 */
public final class PlainScreen implements Screen {

  /** What the end of the keys means. */
  public enum AtEnd {
    /** No more keys will come; the session goes on. */
    GO_ON,
    /** The session shall end. */
    STOP
  }

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private final Clock clock;
  private final ZoneId zone;
  private final PrintStream out;
  private final InputStream keys;
  private final AtEnd atEnd;
  private final ViewChanges changes = new ViewChanges();
  private final AtomicReference<EventSink> sink = new AtomicReference<>(event -> {});

  /**
   * A screen without keys.
   *
   * @param clock gives the time in front of the lines
   * @param zone the station's time zone
   * @param out where the lines go; not closed
   */
  public PlainScreen(Clock clock, ZoneId zone, PrintStream out) {
    this(clock, zone, out, InputStream.nullInputStream(), AtEnd.GO_ON);
  }

  /**
   * A screen with keys.
   *
   * @param clock gives the time in front of the lines, and stamps the keys
   * @param zone the station's time zone
   * @param out where the lines go; not closed
   * @param keys the keys, in UTF-8; not closed
   * @param atEnd what the end of the keys means
   */
  public PlainScreen(Clock clock, ZoneId zone, PrintStream out, InputStream keys, AtEnd atEnd) {
    this.clock = clock;
    this.zone = zone;
    this.out = out;
    this.keys = keys;
    this.atEnd = atEnd;
  }

  @Override
  public void start(EventSink sink) {
    this.sink.set(sink);
    // a read of a pipe cannot be called off, so the thread must not hold up the end
    Thread reading = new Thread(this::readKeys, "plain-keys");
    reading.setDaemon(true);
    reading.start();
  }

  @Override
  public synchronized void show(View view) {
    changes.since(view).forEach(this::print);
    if (out.checkError()) {
      stop();
    }
  }

  /** Drops what is still keyed. The streams stay open: they are their owner's. */
  @Override
  public void close() {
    sink.set(event -> {});
    out.flush();
  }

  private void print(String line) {
    out.print(TIME.format(clock.now().atZone(zone)) + " " + line + "\n");
  }

  private void readKeys() {
    Reader reader = new InputStreamReader(keys, StandardCharsets.UTF_8);
    try {
      for (int c = reader.read(); c >= 0; c = reader.read()) {
        PlainKeys.key((char) c)
            .ifPresent(key -> sink.get().post(new Event.KeyStruck(clock.now(), key)));
      }
    } catch (IOException e) {
      // a stream that breaks has no more keys, as one that ends
    }
    if (atEnd == AtEnd.STOP) {
      stop();
    }
  }

  /** Asks for the end, once. */
  private void stop() {
    sink.getAndSet(event -> {}).post(new Event.Stopping(clock.now()));
  }
}
