package org.calamus.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.calamus.support.JarProcess;
import org.calamus.support.TmuxWindow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole session with the program's own form in a real terminal, by the keys of a numeric keypad
 * alone: digits, Enter, and {@code + - * / .}.
 */
class KeypadIT {

  /** What a keypad sends with Num Lock off, by the names that tmux has for it. */
  private static final Map<Character, String> UNLOCKED =
      Map.ofEntries(
          Map.entry('0', "IC"),
          Map.entry('1', "End"),
          Map.entry('2', "Down"),
          Map.entry('3', "NPage"),
          Map.entry('4', "Left"),
          Map.entry('6', "Right"),
          Map.entry('7', "Home"),
          Map.entry('8', "Up"),
          Map.entry('9', "PPage"),
          Map.entry('.', "DC"));

  @TempDir Path folder;
  private TmuxWindow window;

  @BeforeEach
  void openWindow() throws IOException {
    window = TmuxWindow.open(folder, 80, 24);
    Path data = Files.createDirectories(folder.resolve("data"));
    Files.writeString(
        data.resolve("station.toml"),
        """
        place = 'Fenwick Marsh'
        bander = 'QX'
        zone = 'UTC'

        [[string]]
        size = '1B'
        first = '2841-55601'
        last = '2841-55700'
        """);
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Path start = folder.resolve("start");
    Files.writeString(
        start,
        "exec "
            + java
            + " -jar "
            + JarProcess.jar()
            + " capture --keypad --quiet --data "
            + data
            + "\n");
    window.line("clear; sh " + start + "; echo it 'has' ended");
    window.await("> Species");
  }

  @AfterEach
  void closeWindow() {
    if (window != null) {
      window.close();
    }
  }

  @Test
  void savesEveryKindOfCaptureCorrectsAndAnswersEveryQuestion() {
    // a new bird: a wing is asked about and dropped, then one is kept; the mass is corrected
    strike("7270\n601\n1\n2\n4\n2\n");
    strike("+1729\n");
    window.await("Keep 29 mm?");
    strike("-");
    window.awaitGone("Keep 29 mm?");
    strike("92\n+2123.2\n+2122.3\n");
    window.await("22.3 g");
    saved("++", 1);

    // a recapture; the band in the records makes it one by itself
    strike("+02284155601\n");
    window.await("Earlier captures");
    strike("7270\n1\n2\n4\n2\n+2122.8\n");
    window.await("now +0.5");
    saved("++", 2);

    // a band from elsewhere is read twice
    strike("+013\n123456789\n");
    window.await("read it from the bird once more");
    strike("123456789\n5810\n1\n2\n0\n*");
    saved("++", 3);

    // replaced, added, without a band
    strike("+014\n284155601\n7270\n602\n1\n2\n4\n2\n");
    saved("++", 4);
    strike("+015\n284155602\n7270\n603\n1\n2\n4\n2\n");
    saved("++", 5);
    strike("+016\n6190\n");
    saved("++", 6);

    // bands that became nothing
    strike("+017\n604\n");
    saved("++", 7);
    strike("+018\n605\n");
    saved("++", 8);

    // a band is skipped, and the bands before it are accounted for
    strike("7270\n607\n");
    window.await("not accounted");
    strike("+1");
    window.awaitGone("not accounted");
    strike("1\n2\n4\n2\n");
    // the bird must go
    window.await("Skull");
    strike("+/");
    window.await("next band 2841-55608");

    // a record is given up after a question, and the session ends after one
    strike("7270\n+98");
    window.await("Abandon this record?");
    strike("\n");
    window.await("Abandoned.");
    strike("7270\n+99");
    window.await("End the session?");
    strike("\n");
    window.await("it has ended");
    assertThat(window.isOnOtherScreen()).isFalse();
    assertThat(window.shown()).doesNotContain("Exception");
  }

  @Test
  void savesABirdWithNumLockOff() {
    for (char key : "7270\n601\n".toCharArray()) {
      unlocked(key);
    }
    window.await("> Age", "2841-55601");
    for (char key : "1\n2\n".toCharArray()) {
      unlocked(key);
    }
    window.await("> Sex", "PL plumage");
    for (char key : "4\n2\n+1791.5\n".toCharArray()) {
      unlocked(key);
    }
    window.await("91.5 mm", "> Net");
    saved("++", 1);
  }

  private void saved(String keys, int record) {
    strike(keys);
    window.await("Saved record " + record + ".");
  }

  private void strike(String keys) {
    window.keys(
        keys.chars()
            .mapToObj(key -> key == '\n' ? "Enter" : Character.toString(key))
            .toArray(String[]::new));
  }

  private void unlocked(char key) {
    if (key == '5') {
      // the middle key has no name in tmux; this is what xterm sends
      window.keys("-H", "1b", "5b", "45");
    } else {
      window.keys(UNLOCKED.getOrDefault(key, key == '\n' ? "Enter" : String.valueOf(key)));
    }
  }
}
