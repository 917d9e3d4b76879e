package org.calamus.adapter.lanterna;

import static org.assertj.core.api.Assertions.assertThat;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.ansi.ANSITerminal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.calamus.core.dialogue.Key;
import org.calamus.support.Outside;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The keys of a keypad with Num Lock off, as the terminal database of the machine says that each
 * terminal sends them. It knows what terminals send in the mode in which a program has set them to
 * application keys; the other mode is in {@link DecodingTest}.
 */
class TerminfoTest {

  /** The names of the keys in the database (terminfo, manual page 5), and what they stand for. */
  private static final Map<String, Character> KEYS =
      Map.ofEntries(
          Map.entry("kich1", '0'),
          Map.entry("kend", '1'),
          Map.entry("kcud1", '2'),
          Map.entry("knp", '3'),
          Map.entry("kcub1", '4'),
          Map.entry("kb2", '5'),
          Map.entry("kcuf1", '6'),
          Map.entry("khome", '7'),
          Map.entry("kcuu1", '8'),
          Map.entry("kpp", '9'),
          Map.entry("kdch1", '.'),
          Map.entry("ka1", '7'),
          Map.entry("ka3", '9'),
          Map.entry("kc1", '1'),
          Map.entry("kc3", '3'));

  @ParameterizedTest
  @ValueSource(
      strings = {
        "linux",
        "xterm",
        "xterm-256color",
        "screen",
        "screen-256color",
        "tmux",
        "tmux-256color",
        "rxvt",
        "rxvt-unicode"
      })
  void everyKeyOfTheKeypadIsADigitOrThePoint(String terminal)
      throws IOException, InterruptedException {
    Map<String, String> sent = keys(terminal);
    assertThat(sent.keySet()).as("keys of " + terminal).contains("kcuu1", "khome", "kdch1");
    Map<String, Optional<Character>> got = new TreeMap<>();
    Map<String, Optional<Character>> wanted = new TreeMap<>();
    for (Map.Entry<String, String> key : sent.entrySet()) {
      got.put(key.getKey(), decoded(key.getValue()));
      wanted.put(key.getKey(), Optional.of(KEYS.get(key.getKey())));
    }
    assertThat(got).as(terminal).isEqualTo(wanted);
  }

  private static Map<String, String> keys(String terminal)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(Outside.program("infocmp").toString(), "-1", terminal)
            .redirectErrorStream(true)
            .start();
    String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw Outside.missing("the terminal " + terminal);
    }
    return output
        .lines()
        .map(String::strip)
        .map(line -> line.replaceAll(",$", "").split("=", 2))
        .filter(parts -> parts.length == 2 && KEYS.containsKey(parts[0]))
        .collect(Collectors.toMap(parts -> parts[0], parts -> parts[1].replace("\\E", "\u001b")));
  }

  private static Optional<Character> decoded(String sent) throws IOException {
    List<Character> keys = new ArrayList<>();
    try (Bytes terminal = new Bytes(sent)) {
      for (KeyStroke stroke = terminal.pollInput();
          stroke != null && stroke.getKeyType() != KeyType.EOF;
          stroke = terminal.pollInput()) {
        KeyTable.key(stroke).map(Key::character).ifPresent(keys::add);
      }
    }
    return keys.size() == 1 ? Optional.of(keys.get(0)) : Optional.empty();
  }

  private static final class Bytes extends ANSITerminal {
    Bytes(String sent) {
      super(in(sent), OutputStream.nullOutputStream(), StandardCharsets.UTF_8);
      Decoding.teach(getInputDecoder());
    }

    private static InputStream in(String sent) {
      return new ByteArrayInputStream(sent.getBytes(StandardCharsets.UTF_8));
    }
  }
}
