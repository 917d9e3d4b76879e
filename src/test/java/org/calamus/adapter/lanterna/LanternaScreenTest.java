package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.googlecode.lanterna.TerminalPosition;
import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.Terminal;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import com.googlecode.lanterna.terminal.virtual.VirtualTerminalListener;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.View;
import org.calamus.port.Screen.ScreenException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class LanternaScreenTest {

  private static final Instant NOW = Instant.parse("2026-11-25T08:41:00Z");
  private static final Map<String, String> XTERM = Map.of("TERM", "xterm");

  private final DefaultVirtualTerminal terminal =
      new DefaultVirtualTerminal(new TerminalSize(80, 24));
  private final Queue<Event> events = new ConcurrentLinkedQueue<>();
  private LanternaScreen screen = screen(XTERM);

  private LanternaScreen screen(Map<String, String> environment) {
    return new LanternaScreen(() -> NOW, environment, () -> terminal);
  }

  @AfterEach
  void close() {
    screen.close();
  }

  private void showAndAwait(View view, String text) {
    screen.show(view);
    awaitText(text);
  }

  private void awaitText(String text) {
    Screens.await(text, () -> Screens.text(terminal).contains(text));
  }

  private void awaitPicture(String picture) {
    Screens.await(picture, () -> Screens.text(terminal).equals(picture));
  }

  private void strike(String keys) {
    keys.chars().forEach(c -> terminal.addInput(new KeyStroke((char) c, false, false)));
  }

  private void awaitEvents(int count) {
    Screens.await(count + " events", () -> events.size() >= count);
  }

  @Test
  void showDrawsTheViewWhole() {
    screen.start(events::add);
    screen.show(Views.question());
    awaitPicture(Screens.text(Views.question(), 80, 24));
  }

  @Test
  void showDoesNothingBeforeStartAndAfterClose() {
    screen.show(Views.asking());
    screen.start(events::add);
    showAndAwait(Views.question(), "Keep 29 mm?");
    screen.close();
    screen.show(Views.asking());
    screen.close();
    assertThat(events).isEmpty();
  }

  @Test
  void keysArePostedWithTheirTime() {
    screen.start(events::add);
    strike("9.");
    terminal.addInput(new KeyStroke(KeyType.Enter));
    terminal.addInput(new KeyStroke('c', true, false));
    awaitEvents(4);
    assertThat(events)
        .containsExactly(
            new Event.KeyStruck(NOW, Key.of('9')),
            new Event.KeyStruck(NOW, Key.of('.')),
            new Event.KeyStruck(NOW, Key.of(Key.Name.ENTER)),
            new Event.KeyStruck(NOW, Key.of(Key.Name.INTERRUPT)));
  }

  @Test
  void keysWorkWhileTheWindowIsTooSmallAndNothingIsLostWhenItGrows() {
    screen.start(events::add);
    showAndAwait(Views.question(), "Keep 29 mm?");
    terminal.setTerminalSize(new TerminalSize(58, 10));
    awaitText(Picture.TOO_SMALL);
    strike("9");
    awaitEvents(1);
    terminal.setTerminalSize(new TerminalSize(120, 40));
    awaitPicture(Screens.text(Views.question(), 120, 40));
    terminal.setTerminalSize(new TerminalSize(80, 24));
    awaitPicture(Screens.text(Views.question(), 80, 24));
  }

  @Test
  void pastedTextIsDroppedButTheInterruptIsNot() {
    screen.start(events::add);
    terminal.addInput(Decoding.PasteEdge.BEGIN);
    strike("1234567890".repeat(1000));
    terminal.addInput(new KeyStroke('c', true, false));
    terminal.addInput(Decoding.PasteEdge.END);
    strike("7");
    awaitEvents(2);
    assertThat(events)
        .containsExactly(
            new Event.KeyStruck(NOW, Key.of(Key.Name.INTERRUPT)),
            new Event.KeyStruck(NOW, Key.of('7')));
  }

  @Test
  void anUnmarkedFloodOfKeysComesThroughWholeAndThePictureGoesOn() {
    screen.start(events::add);
    strike("1234567890".repeat(1000));
    showAndAwait(Views.question(), "Keep 29 mm?");
    awaitEvents(10_000);
    assertThat(events).hasSize(10_000);
  }

  @Test
  void tenThousandViewsAreDrawnInFewDrawingsAndTheLastOneStays() {
    AtomicInteger drawings = new AtomicInteger();
    screen.start(events::add);
    terminal.addVirtualTerminalListener(new CountingListener(drawings));
    for (int i = 0; i < 10_000; i++) {
      screen.show(Views.big(Integer.toString(i)));
    }
    awaitPicture(Screens.text(Views.big("9999"), 80, 24));
    assertThat(drawings.get()).isLessThan(5_000);
  }

  @Test
  void aNewLevelTouchesTheBarAlone() {
    AtomicInteger drawings = new AtomicInteger();
    terminal.addVirtualTerminalListener(new CountingListener(drawings));
    screen.start(events::add);
    screen.show(Views.at(-38));
    Screens.await("the first drawing", () -> drawings.get() == 1);
    terminal.isWholeBufferDirtyThenReset();
    screen.show(Views.at(-12));
    Screens.await("the second drawing", () -> drawings.get() == 2);
    assertThat(terminal.getAndResetDirtyCells())
        .isNotEmpty()
        .allMatch(cell -> cell.getRow() == 0 && cell.getColumn() >= 69)
        .doesNotContain(new TerminalPosition(69, 0));
  }

  @Test
  void controlLDrawsAllAnewAndIsNoKey() {
    AtomicInteger drawings = new AtomicInteger();
    terminal.addVirtualTerminalListener(new CountingListener(drawings));
    screen.start(events::add);
    screen.show(Views.question());
    Screens.await("the first drawing", () -> drawings.get() == 1);
    terminal.setCursorPosition(0, 4);
    terminal.putString("written by another program");
    terminal.addInput(new KeyStroke('l', true, false));
    Screens.await("the second drawing", () -> drawings.get() == 2);
    awaitPicture(Screens.text(Views.question(), 80, 24));
    assertThat(events).isEmpty();
  }

  @Test
  void noColourIsUsedWhenTheEnvironmentSaysSo() {
    screen = screen(Map.of("TERM", "xterm", "NO_COLOR", "1"));
    screen.start(events::add);
    showAndAwait(Views.partsDown(), "DOWN");
    assertThat(Screens.cells(terminal))
        .allMatch(cell -> cell.getForegroundColor().equals(TextColor.ANSI.DEFAULT));
  }

  @Test
  void asciiIsUsedWhenTheLocaleIsNotUnicode() {
    screen = screen(Map.of("TERM", "xterm", "LC_ALL", "C"));
    screen.start(events::add);
    showAndAwait(Views.question(), "+- CHECK -");
    assertThat(Screens.text(terminal)).matches("\\p{ASCII}*").contains("####......");
  }

  @Test
  void theEndOfTheTerminalStopsTheSessionOnce() {
    screen.start(events::add);
    terminal.addInput(new KeyStroke(KeyType.EOF));
    awaitEvents(1);
    screen.close();
    assertThat(events).containsExactly(new Event.Stopping(NOW));
  }

  @Test
  void startSaysWhereElseToRunItOnWindows() {
    screen = new LanternaScreen(() -> NOW, Map.of("OS", "Windows_NT"));
    assertThatThrownBy(() -> screen.start(events::add))
        .isInstanceOf(ScreenException.class)
        .hasMessageContainingAll("Linux subsystem", "ssh", "--plain");
  }

  @Test
  void startSaysWhatToDoWhenThereIsNoTerminal() {
    IOException cause = new IOException("no such device");
    screen =
        new LanternaScreen(
            () -> NOW,
            XTERM,
            () -> {
              throw cause;
            });
    assertThatThrownBy(() -> screen.start(events::add))
        .isInstanceOf(ScreenException.class)
        .hasMessage("There is no terminal here: run it with --plain, or in a terminal window.")
        .hasCause(cause);
  }

  @Test
  void startSaysWhatToDoWhenTheTerminalIsDumb() {
    for (Map<String, String> environment :
        List.of(Map.of("TERM", "dumb"), Map.<String, String>of())) {
      screen = screen(environment);
      assertThatThrownBy(() -> screen.start(events::add))
          .isInstanceOf(ScreenException.class)
          .hasMessageContaining("--plain");
    }
  }

  /** Counts the drawings. */
  private record CountingListener(AtomicInteger drawings) implements VirtualTerminalListener {
    @Override
    public void onFlush() {
      drawings.incrementAndGet();
    }

    @Override
    public void onBell() {}

    @Override
    public void onClose() {}

    @Override
    public void onResized(Terminal terminal, TerminalSize newSize) {}
  }
}
