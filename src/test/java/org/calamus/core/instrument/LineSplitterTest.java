package org.calamus.core.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.calamus.core.instrument.Framing.Beginning;
import org.calamus.core.instrument.Framing.FixedLength;
import org.calamus.core.instrument.Framing.HighBit;
import org.calamus.core.instrument.Framing.Terminated;
import org.calamus.core.instrument.LineSplitter.Dropped;
import org.calamus.core.instrument.LineSplitter.Line;
import org.calamus.core.instrument.LineSplitter.Piece;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineSplitterTest {

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # terminator, stream with r and n for the two characters, lines
          CR,    ab.r.cd.r,       ab|cd
          LF,    ab.n.cd.n,       ab|cd
          CR_LF, ab.r.n.cd.r.n,   ab|cd
          ANY,   ab.r.n.cd.r.n,   ab|cd
          ANY,   ab.n.cd.r.ef.n,  ab|cd|ef
          ANY,   ab.r.n.cd,       ab
          CR_LF, ab.r.n.cd.r,     ab
          ANY,   r.n.r.n.ab.n,    ab
          """)
  void stepGivesLinesAtTheirTerminator(Terminator terminator, String stream, String lines) {
    String characters =
        String.join("", Arrays.asList(stream.split("\\."))).replace('r', '\r').replace('n', '\n');

    List<Piece> pieces = split(Framing.endedBy(terminator), List.of(bytes(characters)));

    assertThat(pieces)
        .isEqualTo(Arrays.stream(lines.split("\\|")).map(text -> (Piece) new Line(text)).toList());
  }

  @Test
  void stepKeepsHalfALineForItsRest() {
    LineSplitter.Step first = LineSplitter.opened(lines()).step(bytes("ST,+000"));
    LineSplitter.Step second = first.next().step(bytes("22.3  g\r\nUS"));

    assertThat(first.pieces()).isEmpty();
    assertThat(second.pieces()).containsExactly(new Line("ST,+00022.3  g"));
    assertThat(second.next().gathered()).isEqualTo("US");
  }

  @Test
  void interruptedForgetsTheHalfLine() {
    LineSplitter half = LineSplitter.opened(lines()).step(bytes("ST,+0002")).next();

    LineSplitter.Step broken = half.interrupted();
    LineSplitter.Step after = broken.next().step(bytes("1.4  g\r\n"));

    assertThat(broken.pieces())
        .containsExactly(new Dropped("ST,+0002", "the line broke off in the middle"));
    assertThat(after.pieces()).containsExactly(new Line("1.4  g"));
  }

  @Test
  void stepDropsAnOverlongLineOnceAndReadsTheNext() {
    List<Piece> pieces = split(lines(), List.of(bytes("x".repeat(5000)), bytes("yyy\r\nST\r\n")));

    assertThat(pieces)
        .containsExactly(new Dropped("x".repeat(81), "the line is too long"), new Line("ST"));
  }

  @Test
  void stepTakesALineOfTheGreatestLength() {
    assertThat(split(lines(), List.of(bytes("x".repeat(80) + "\r\n"))))
        .containsExactly(new Line("x".repeat(80)));
    assertThat(split(Framing.endedBy(Terminator.CR_LF), List.of(bytes("x".repeat(80) + "\r\n"))))
        .containsExactly(new Line("x".repeat(80)));
  }

  @Test
  void stepDropsTheFirstLineWhereItMayBeCut() {
    Framing framing = framing(HighBit.REFUSE, Beginning.MAY_BE_CUT);

    assertThat(split(framing, List.of(bytes("2.3 g\r\n22.3 g\r\n"))))
        .containsExactly(
            new Dropped("2.3 g", "the first line after opening may lack its front"),
            new Line("22.3 g"));
  }

  @Test
  void stepStripsParityAndNul() {
    // "A2" with even parity in the eighth bit: 0xC1 is not even; 0x41 and 0xB2 are
    byte[] raw = {0x41, 0, (byte) 0xB2, (byte) 0x8D, 0x0A};

    assertThat(split(framing(HighBit.STRIP, Beginning.WHOLE), List.of(raw)))
        .containsExactly(new Line("A2"));
    assertThat(split(framing(HighBit.REFUSE, Beginning.WHOLE), List.of(raw)))
        .allMatch(Dropped.class::isInstance)
        .hasSize(1);
  }

  @Test
  void stepDropsALineWithAControlCharacter() {
    assertThat(split(lines(), List.of(bytes("22\u00073 g\r\n"))))
        .containsExactly(new Dropped("22\u00073 g", "a control character stands in the line"));
  }

  @Test
  void stepCutsLinesOfFixedLength() {
    Framing framing =
        new Framing(
            new FixedLength(4),
            HighBit.REFUSE,
            Beginning.WHOLE,
            Framing.USUAL_LONGEST_LINE,
            Framing.USUAL_LONGEST_PAUSE);

    assertThat(split(framing, List.of(bytes("22.31"), bytes("1.4 9"))))
        .containsExactly(new Line("22.3"), new Line("11.4"));
  }

  @Test
  void stepGivesTheSameWhateverThePortions() {
    Random random = new Random(20260411);
    for (int round = 0; round < 500; round++) {
      byte[] stream = randomStream(random);
      Terminator terminator = Terminator.values()[random.nextInt(4)];
      Framing framing = Framing.endedBy(terminator);

      assertThat(split(framing, portions(stream, random)))
          .as("round %d, %s", round, terminator)
          .isEqualTo(split(framing, List.of(stream)));
    }
  }

  private static byte[] randomStream(Random random) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(20); i >= 0; i--) {
      String piece =
          switch (random.nextInt(6)) {
            case 0 -> "x".repeat(random.nextInt(200));
            case 1 -> "\u0000\u00FF\u0007";
            case 2 -> "\r";
            case 3 -> "\n";
            default -> "ST,+00022.3  g\r\n";
          };
      text.append(piece);
    }
    return text.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Cuts bytes into portions of 0 to 9. */
  static List<byte[]> portions(byte[] stream, Random random) {
    List<byte[]> portions = new ArrayList<>();
    for (int from = 0; from < stream.length; ) {
      int to = Math.min(stream.length, from + random.nextInt(10));
      portions.add(Arrays.copyOfRange(stream, from, to));
      from = to;
    }
    return portions;
  }

  private static List<Piece> split(Framing framing, List<byte[]> portions) {
    LineSplitter splitter = LineSplitter.opened(framing);
    List<Piece> pieces = new ArrayList<>();
    for (byte[] portion : portions) {
      LineSplitter.Step step = splitter.step(portion);
      pieces.addAll(step.pieces());
      splitter = step.next();
    }
    return pieces;
  }

  private static Framing lines() {
    return framing(HighBit.REFUSE, Beginning.WHOLE);
  }

  private static Framing framing(HighBit highBit, Beginning beginning) {
    return new Framing(
        new Terminated(Terminator.ANY),
        highBit,
        beginning,
        Framing.USUAL_LONGEST_LINE,
        Framing.USUAL_LONGEST_PAUSE);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
