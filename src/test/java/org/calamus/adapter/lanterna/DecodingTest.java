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
import org.calamus.core.dialogue.Key;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecodingTest {

  /** The bytes of a terminal, decoded as a real one's are. */
  private static final class Bytes extends ANSITerminal {
    Bytes(InputStream in) {
      super(in, OutputStream.nullOutputStream(), StandardCharsets.UTF_8);
      Decoding.teach(getInputDecoder());
    }
  }

  /** What the bytes come to: characters as they are, other keys as {@code <NAME>}. */
  private static String decode(InputStream in) throws IOException {
    StringBuilder keys = new StringBuilder();
    try (Bytes terminal = new Bytes(in)) {
      for (KeyStroke stroke = terminal.pollInput();
          stroke != null && stroke.getKeyType() != KeyType.EOF;
          stroke = terminal.pollInput()) {
        KeyTable.key(stroke)
            .ifPresent(
                key ->
                    keys.append(
                        key.name() == Key.Name.CHARACTER
                            ? key.character()
                            : "<" + key.name() + ">"));
      }
    }
    return keys.toString();
  }

  private static InputStream bytes(String readable) {
    String raw =
        readable
            .replace("ESC", "\u001b")
            .replace("CR", "\r")
            .replace("LF", "\n")
            .replace("DEL", "\u007f")
            .replace("BS", "\b")
            .replace("TAB", "\t")
            .replace("^C", "\u0003")
            .replace("^S", "\u0013")
            .replace("_", " ");
    return new ByteArrayInputStream(raw.getBytes(StandardCharsets.UTF_8));
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource(
      quoteCharacter = '\'',
      textBlock =
          """
          # the top row, and a keypad with Num Lock on
          0123456789         | 0123456789
          .+-*/              | .+-*/
          ,                  | .
          wbnu               | wbnu
          _                  | <TALK>
          LF                 | <ENTER>
          CR                 | <ENTER>
          DEL                | <BACKSPACE>
          BS                 | <BACKSPACE>
          ^C                 | <INTERRUPT>
          # application keypad
          ESCOpESCOqESCOrESCOsESCOtESCOuESCOvESCOwESCOxESCOy | 0123456789
          ESCOjESCOkESCOmESCOnESCOoESCOl                     | *+-./.
          ESCOM              | <ENTER>
          # keypad with Num Lock off: xterm and its like
          ESC[2~ESC[FESC[BESC[6~ESC[DESC[EESC[CESC[HESC[AESC[5~ESC[3~ | 0123456789.
          # the text console: ESC [ G is the five, ESC [ 1 ~ and ESC [ 4 ~ are Home and End
          ESC[1~ESC[GESC[4~  | 751
          # rxvt
          ESC[7~ESC[8~       | 71
          # cursor keys in application mode: Home, End, up, down, right, left and the middle
          ESCOHESCOFESCOAESCOBESCOCESCODESCOE | 7182645
          """,
      delimiter = '|')
  void decodeGivesTheKey(String input, String keys) throws IOException {
    assertThat(decode(bytes(input))).isEqualTo(keys);
  }

  @ParameterizedTest(name = "{0} is nothing")
  @CsvSource({
    // Alt and a character
    "ESC5",
    "ESCx",
    "ESC.",
    // Ctrl, Alt or Shift and a cursor key
    "ESC[1;5H",
    "ESC[1;3A",
    "ESC[1;2B",
    "ESC[3;5~",
    "ESCESC[A",
    // keys by number: kitty's keyboard protocol, with and without modifiers and text
    "ESC[57400u",
    "ESC[53;5u",
    "ESC[57399;1:3u",
    "ESC[97;2;65u",
    // xterm's modifyOtherKeys
    "ESC[27;5;53~",
    // function keys
    "ESCOP",
    "ESC[15~",
    "ESC[24~",
    "ESC[[A",
    // focus, mouse and device reports
    "ESC[I",
    "ESC[O",
    "ESC[?62;1;4c",
    "ESC[>0;276;0c",
    "ESC[0n",
    // other keys
    "TAB",
    "^S",
    "=",
    "#",
  })
  void decodeDropsWhatMeansNothing(String input) throws IOException {
    assertThat(decode(bytes(input))).isEmpty();
    assertThat(decode(bytes(input + "LF"))).as("the key after it").endsWith("<ENTER>");
  }

  @Test
  void decodeDropsTheEscapeKeyAndWhatFollowsItAtOnce() throws IOException {
    assertThat(decode(bytes("ESC"))).isEmpty();
    assertThat(decode(bytes("ESCESC"))).isEmpty();
    assertThat(decode(bytes("ESC72"))).as("Alt and 7, then 2").isEqualTo("2");
    assertThat(decode(new Halting("\u001b", "", "", "7"))).as("a slow 7").isEqualTo("7");
  }

  @Test
  void decodeKeepsASequenceWholeWhenASlowLineSplitsIt() throws IOException {
    assertThat(decode(new Halting("\u001b", "[57400u", "7"))).isEqualTo("7");
    assertThat(decode(new Halting("\u001b[", "5740", "0u", "7"))).isEqualTo("7");
  }

  @Test
  void decodeTellsTheEdgesOfAPasteApart() throws IOException {
    try (Bytes terminal = new Bytes(bytes("ESC[200~12ESC[201~"))) {
      assertThat(terminal.pollInput()).isSameAs(Decoding.PasteEdge.BEGIN);
      assertThat(terminal.pollInput().getCharacter()).isEqualTo('1');
      assertThat(terminal.pollInput().getCharacter()).isEqualTo('2');
      assertThat(terminal.pollInput()).isSameAs(Decoding.PasteEdge.END);
    }
  }

  /**
   * Gives its pieces one by one: at the end of each, nothing is there the first time it is asked.
   */
  private static final class Halting extends InputStream {
    private final StringBuilder rest = new StringBuilder();

    Halting(String... pieces) {
      rest.append(String.join("|", pieces));
    }

    @Override
    public int available() {
      if (rest.isEmpty()) {
        return 0;
      }
      if (rest.charAt(0) == '|') {
        rest.deleteCharAt(0);
        return 0;
      }
      int end = rest.indexOf("|");
      return end < 0 ? rest.length() : end;
    }

    @Override
    public int read() {
      if (rest.isEmpty()) {
        return -1;
      }
      char c = rest.charAt(0);
      rest.deleteCharAt(0);
      return c;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
      int count = Math.min(available(), length);
      for (int i = 0; i < count; i++) {
        into[offset + i] = (byte) read();
      }
      return count;
    }
  }
}
