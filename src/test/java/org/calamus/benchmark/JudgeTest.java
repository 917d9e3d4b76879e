package org.calamus.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Word;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What comes of what was heard. */
class JudgeTest {

  private final Judge judge = new Judge();

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # said,      heard,        verdict
          six eight,   six eight,    RIGHT
          six eight,   sixty eight,  RIGHT
          six eight,   six five,     WRONG
          six eight,   eight,        AGAIN
          six eight,   [unk],        AGAIN
          six eight,   '',           AGAIN
          six eight,   next field,   AGAIN
          """)
  void ofComparesWhatIsKeptWithWhatWasMeant(String said, String heard, Verdict verdict) {
    Said wing = new Said("wing", Moments.asking(FieldId.WING), said, said);

    assertThat(judge.of(wing, words(heard), 1)).isEqualTo(verdict);
  }

  @ParameterizedTest
  @CsvSource({"'', RIGHT", "[unk], RIGHT", "six eight, WRONG", "wing, AGAIN"})
  void ofTakesAnyValueFromChatterForAFault(String heard, Verdict verdict) {
    Said chatter = new Said("sentences", Moments.asking(FieldId.WING), "", "Is it raining?");

    assertThat(judge.of(chatter, words(heard), 1)).isEqualTo(verdict);
  }

  private static List<Word> words(String text) {
    return Stream.of(text.split(" ")).filter(w -> !w.isEmpty()).map(Word::of).toList();
  }

  @ParameterizedTest
  @CsvSource({"six eight, true", "murmur, false"})
  void isListenedForKnowsTheWordsOfTheMoment(String words, boolean expected) {
    List<String> before = Moments.asking(FieldId.WING);

    assertThat(judge.isListenedFor(new Said("wing", before, words, words))).isEqualTo(expected);
  }
}
