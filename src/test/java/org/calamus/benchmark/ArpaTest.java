package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.calamus.core.record.FieldId;
import org.junit.jupiter.api.Test;

/** Grammars as bigrams. */
class ArpaTest {

  private static final List<String> PHRASES =
      List.of("six", "six", "five", "save record", "six five", "[unk]");

  @Test
  void weightsOfSingleWordsSumToOne() {
    Arpa arpa = new Arpa(PHRASES);

    assertThat(arpa.words().stream().mapToDouble(arpa::weight).sum()).isCloseTo(1, within(1e-9));
  }

  /** Six of the fourteen counted, each phrase's end among them, are ends. */
  @Test
  void weightCountsRepeatsAndEnds() {
    Arpa arpa = new Arpa(PHRASES);

    assertThat(arpa.weight("six")).isCloseTo(3.0 / 14, within(1e-9));
    assertThat(arpa.weight("</s>")).isCloseTo(6.0 / 14, within(1e-9));
  }

  @Test
  void weightBehindAWordKeepsHalfForWhatWasNotSeen() {
    Arpa arpa = new Arpa(PHRASES);

    assertThat(arpa.weight("save", "record")).isCloseTo(0.5 + 0.5 / 14, within(1e-9));
    assertThat(arpa.weight("save", "five")).isCloseTo(0.5 * 2 / 14, within(1e-9));
  }

  @Test
  void weightsBehindEachWordOfARealGrammarSumToOne() {
    Said said = new Said("wing", Moments.asking(FieldId.WING), "six five", "six five");
    Arpa arpa = new Arpa(new Judge().grammar(said).phrases());

    for (String before : List.of("six", "point", "wing", "[unk]")) {
      assertThat(arpa.words().stream().mapToDouble(w -> arpa.weight(before, w)).sum())
          .as(before)
          .isCloseTo(1, within(1e-9));
    }
  }

  @Test
  void textHasTheCountsThatItAnnounces() {
    List<String> lines = new Arpa(PHRASES).text().lines().toList();
    int singles = lines.indexOf("\\2-grams:") - lines.indexOf("\\1-grams:") - 2;
    int pairs = lines.indexOf("\\end\\") - lines.indexOf("\\2-grams:") - 2;

    assertThat(lines).contains("ngram 1=" + singles, "ngram 2=" + pairs);
    assertThat(singles).isEqualTo(7);
    assertThat(pairs).isEqualTo(6);
  }
}
