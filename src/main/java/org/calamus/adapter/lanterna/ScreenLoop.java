package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.screen.Screen.RefreshType;
import com.googlecode.lanterna.screen.TerminalScreen;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.View;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;

/**
 * Reads the keys and draws the views, on a thread of its own. Of several views given between two
 * drawings only the newest is drawn.
 */
final class ScreenLoop implements Runnable {

  /** Between two looks at the keys; a key is echoed within 0.1 s. */
  private static final long PAUSE_NANOS = TimeUnit.MILLISECONDS.toNanos(20);

  /** Most keys taken between two drawings, so that a flood of them does not freeze the picture. */
  private static final int MOST_KEYS = 32;

  /** A paste whose end never comes is over when no key came for so long. */
  private static final long PASTE_NANOS = TimeUnit.SECONDS.toNanos(1);

  /** Ctrl-L draws all anew, where another program has written over the picture. */
  private static final KeyStroke REDRAW = new KeyStroke('l', true, false);

  private final TerminalScreen screen;
  private final Cells cells;
  private final Strokes strokes;
  private final BooleanSupplier isGone;
  private final EventSink sink;
  private final Clock clock;
  private final Runnable giveBack;
  private final AtomicReference<View> next = new AtomicReference<>();
  private final CountDownLatch ended = new CountDownLatch(1);
  private final Thread thread = new Thread(this, "screen");

  private volatile boolean isStopping;
  private View drawn;
  private boolean isSpoilt;
  private boolean isPasting;
  private long lastKeyNanos;

  /**
   * Made with a started screen.
   *
   * @param isGone tells that the terminal went away
   * @param giveBack gives the terminal back; called where the loop dies of an error of its own
   */
  ScreenLoop(
      TerminalScreen screen,
      Surroundings surroundings,
      BooleanSupplier isGone,
      EventSink sink,
      Clock clock,
      Runnable giveBack) {
    this.screen = screen;
    this.cells = new Cells(surroundings.palette());
    this.strokes = surroundings.strokes();
    this.isGone = isGone;
    this.sink = sink;
    this.clock = clock;
    this.giveBack = giveBack;
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** Gives the newest view; from any thread. */
  void show(View view) {
    next.set(view);
    LockSupport.unpark(thread);
  }

  /** Asks the loop to end and waits up to the given time; tells whether it has ended. */
  boolean stop(long millis) {
    isStopping = true;
    LockSupport.unpark(thread);
    if (Thread.currentThread() == thread) {
      return true;
    }
    try {
      return ended.await(millis, TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return ended.getCount() == 0;
    }
  }

  @Override
  public void run() {
    try {
      while (!isStopping) {
        readKeys();
        draw();
        if (isGone.getAsBoolean()) {
          throw new IOException("the terminal is gone");
        }
        LockSupport.parkNanos(PAUSE_NANOS);
      }
    } catch (IOException e) {
      // the window was closed or the line cut: nothing can be shown any more
      end(!isStopping);
    } catch (RuntimeException | Error e) {
      crash(e);
    } finally {
      ended.countDown();
    }
  }

  /** Tells of the error while the process still runs: whoever hears of the end may end it. */
  private void crash(Throwable error) {
    ended.countDown();
    giveBack.run();
    thread.getUncaughtExceptionHandler().uncaughtException(thread, error);
    end(true);
  }

  private void end(boolean isOwn) {
    ended.countDown();
    if (isOwn) {
      sink.post(new Event.Stopping(clock.now()));
    }
  }

  private void readKeys() throws IOException {
    for (int i = 0; i < MOST_KEYS && !isStopping; i++) {
      KeyStroke stroke = screen.pollInput();
      if (stroke == null) {
        isPasting = isPasting && System.nanoTime() - lastKeyNanos < PASTE_NANOS;
        return;
      }
      lastKeyNanos = System.nanoTime();
      take(stroke);
    }
    LockSupport.unpark(thread);
  }

  private void take(KeyStroke stroke) throws IOException {
    if (stroke.getKeyType() == KeyType.EOF) {
      throw new IOException("the terminal has ended");
    }
    if (stroke instanceof Decoding.PasteEdge) {
      isPasting = stroke == Decoding.PasteEdge.BEGIN;
      return;
    }
    if (REDRAW.equals(stroke)) {
      isSpoilt = true;
      return;
    }
    Optional<Key> key = KeyTable.key(stroke);
    boolean isMeant = !isPasting || key.equals(Optional.of(Key.of(Key.Name.INTERRUPT)));
    if (key.isPresent() && isMeant) {
      sink.post(new Event.KeyStruck(clock.now(), key.get()));
    }
  }

  private void draw() throws IOException {
    boolean isResized = screen.doResizeIfNecessary() != null;
    View newest = next.getAndSet(null);
    View view = newest == null ? drawn : newest;
    boolean isWhole = isResized || isSpoilt || drawn == null;
    if (view == null || (view.equals(drawn) && !isWhole)) {
      return;
    }
    Sheet sheet = new Sheet(screen.newTextGraphics(), cells, strokes);
    if (!isWhole && drawn.withDecibels(view.decibels()).equals(view)) {
      Picture.drawLevel(sheet, view);
    } else {
      Picture.draw(sheet, view);
    }
    drawn = view;
    isSpoilt = false;
    screen.refresh(isWhole ? RefreshType.COMPLETE : RefreshType.DELTA);
  }
}
