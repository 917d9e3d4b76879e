package org.calamus.adapter.lanterna;

import java.time.Instant;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.View;
import org.calamus.port.Screen;

/**
 * A program of its own for tests in a real terminal: shows what is keyed in large glyphs until it
 * is interrupted. The keys {@code w} and {@code q} show prepared views, as does {@code b}; {@code
 * f} draws without end, {@code x} fails.
 */
final class ScreenDemo {

  private ScreenDemo() {}

  /** Runs until Ctrl-C, or until the terminal is gone. */
  public static void main(String[] arguments) throws InterruptedException {
    CountDownLatch end = new CountDownLatch(1);
    StringBuilder keyed = new StringBuilder();
    try (Screen screen = new LanternaScreen(Instant::now, System.getenv())) {
      screen.start(
          event -> {
            if (event instanceof Event.KeyStruck struck) {
              take(screen, keyed, struck.key(), end);
            } else {
              end.countDown();
            }
          });
      screen.show(Views.asking());
      end.await();
    }
  }

  private static void take(Screen screen, StringBuilder keyed, Key key, CountDownLatch end) {
    if (key.name() == Key.Name.INTERRUPT) {
      end.countDown();
      return;
    }
    if (key.name() != Key.Name.CHARACTER) {
      keyed.setLength(0);
      screen.show(Views.big(key.name().name()));
      return;
    }
    if (key.character() == 'f') {
      Thread flood = new Thread(() -> flood(screen, end), "flood");
      flood.setDaemon(true);
      flood.start();
      return;
    }
    screen.show(view(keyed, key.character()));
  }

  private static void flood(Screen screen, CountDownLatch end) {
    for (int i = 0; end.getCount() > 0; i++) {
      screen.show(i % 2 == 0 ? Views.question() : Views.bandTaken());
      LockSupport.parkNanos(5_000_000);
    }
  }

  private static View view(StringBuilder keyed, char character) {
    switch (character) {
      case 'w':
        return Views.valueTaken();
      case 'q':
        return Views.question();
      case 'b':
        return Views.bandTaken();
      case 'x':
        throw new IllegalStateException("an error on the drawing thread");
      default:
        keyed.append(character);
        return Views.big(keyed.toString());
    }
  }
}
