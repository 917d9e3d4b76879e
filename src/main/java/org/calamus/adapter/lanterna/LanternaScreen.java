package org.calamus.adapter.lanterna;

import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.IOException;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.calamus.core.dialogue.View;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.Screen;

/**
 * The console in a terminal window of 80 by 24 cells or more.
 *
 * <pre>{@code
 * try (Screen screen = new LanternaScreen(clock, System.getenv())) {
 *   screen.start(sink);
 *   screen.show(view);
 * }
 * }</pre>
 *
 * <p>A thread of its own reads and draws. The terminal is given back as it was when this is closed,
 * when the process ends by a signal it can see, and when the drawing dies of an error. While the
 * screen is up nothing else may write to the terminal. {@link #show} and {@link #close} may be
 * called from any thread; {@link #close} takes three seconds at most, even where the terminal takes
 * no output any more.
 */
public final class LanternaScreen implements Screen {

  private static final String NO_TERMINAL =
      "There is no terminal here: run it with --plain, or in a terminal window.";

  private static final String ON_WINDOWS =
      "The screen cannot be drawn on Windows itself: run it in the Linux subsystem, over ssh, or here"
          + " with --plain.";

  private static final long DRAWING_MILLIS = 500;
  private static final long GIVING_BACK_MILLIS = 2_000;

  /** A screen that was started. */
  private record Running(Terminal terminal, TerminalScreen screen, ScreenLoop loop) {}

  private final Clock clock;
  private final Surroundings surroundings;
  private final TerminalSource source;
  private final AtomicReference<Running> running = new AtomicReference<>();

  /**
   * Makes the screen; touches nothing before {@link #start}.
   *
   * @param clock stamps the keys
   * @param environment the environment variables; {@code TERM}, {@code NO_COLOR}, the locale, and
   *     {@code COLUMNS} and {@code LINES} where the system does not know the size
   */
  public LanternaScreen(Clock clock, Map<String, String> environment) {
    this.clock = clock;
    this.surroundings = Surroundings.of(environment);
    this.source = () -> ConsoleTerminal.open(surroundings);
  }

  LanternaScreen(Clock clock, Map<String, String> environment, TerminalSource source) {
    this.clock = clock;
    this.surroundings = Surroundings.of(environment);
    this.source = source;
  }

  @Override
  public void start(EventSink sink) {
    if (surroundings.isWindows()) {
      throw new ScreenException(ON_WINDOWS);
    }
    if (surroundings.isDumb()) {
      throw new ScreenException(
          "This terminal cannot draw a screen: run it with --plain, or in a terminal window.");
    }
    try {
      Terminal terminal = source.open();
      try {
        takeOver(terminal, sink);
      } catch (IOException e) {
        terminal.close();
        throw e;
      }
    } catch (IOException e) {
      throw new ScreenException(NO_TERMINAL, e);
    }
  }

  private void takeOver(Terminal terminal, EventSink sink) throws IOException {
    TerminalScreen screen = new TerminalScreen(terminal);
    screen.setCursorPosition(null);
    screen.startScreen();
    BooleanSupplier isGone = () -> false;
    if (terminal instanceof ConsoleTerminal console) {
      isGone = console::isGone;
    }
    ScreenLoop loop = new ScreenLoop(screen, surroundings, isGone, sink, clock, this::close);
    if (terminal instanceof ConsoleTerminal console) {
      console.beforeLeaving(() -> loop.stop(DRAWING_MILLIS));
    }
    running.set(new Running(terminal, screen, loop));
    loop.start();
  }

  @Override
  public void show(View view) {
    Running now = running.get();
    if (now != null) {
      now.loop().show(view);
    }
  }

  @Override
  public void close() {
    Running last = running.getAndSet(null);
    if (last == null) {
      return;
    }
    last.loop().stop(DRAWING_MILLIS);
    // a terminal that takes no output would hold whoever writes to it, and the end of the process
    Thread giving = new Thread(() -> giveBack(last), "screen-end");
    giving.setDaemon(true);
    giving.start();
    try {
      giving.join(GIVING_BACK_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void giveBack(Running last) {
    try {
      last.screen().stopScreen();
    } catch (IOException | IllegalStateException e) {
      // gone, or given back already by the shutdown hook; closing restores what is left
    }
    try {
      last.terminal().close();
    } catch (IOException | IllegalStateException e) {
      // as above; the hook cannot be taken out while it runs
    }
  }
}
