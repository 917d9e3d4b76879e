package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.calamus.core.speech.Credibility.Sign;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CredibilityTest {

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # words,              voiced, above noise, chatter, unclear
          seven two,               600,          25,   false,   false
          seven two,               600,           8,   false,   false
          seven two,               100,          25,    true,   false
          seven two,             4_000,          25,    true,   false
          six nine nine,         1_900,          25,   false,   false
          slate colored junco,   1_600,          25,   false,   false
          slate colored junco,   3_050,          25,    true,   false
          seven two,               600,           1,    true,   false
          seven two [unk],         900,          25,   false,    true
          seven [unk] [unk],       900,          25,    true,   false
          [unk],                   600,          25,    true,   false
          '',                      600,          25,    true,   false
          """)
  void ofTellsSpeechFromOtherSound(
      String words, String voiced, int aboveNoise, boolean isChatter, boolean isUnclear) {
    Credibility credibility = of(words, Integer.parseInt(voiced.replace("_", "")), aboveNoise);

    assertThat(credibility.isChatter()).isEqualTo(isChatter);
    assertThat(credibility.isUnclear()).isEqualTo(isUnclear);
  }

  @Test
  void ofNamesTheSigns() {
    assertThat(of("seven two", 600, 25).signs()).isEmpty();
    assertThat(of("seven two", 20, 0).signs())
        .isEqualTo(Set.of(Sign.TOO_QUICK, Sign.LOST_IN_NOISE, Sign.NO_VOICE));
  }

  @ParameterizedTest
  @CsvSource({
    "500, 0,   true",
    "500, 40,  true",
    "500, 50,  false",
    "500, 300, false",
    "800, 70,  true",
    "800, 80,  false"
  })
  void ofKnowsAGustOfWindByItsLackOfPitch(int millis, int pitchedMillis, boolean isChatter) {
    Utterance one =
        new Utterance(
            List.of(Word.of("one")),
            List.of(),
            -20,
            Duration.ofMillis(millis),
            25,
            Duration.ofMillis(pitchedMillis));

    assertThat(Credibility.of(one, Credibility.Limits.usual()).isChatter()).isEqualTo(isChatter);
  }

  @Test
  void ofAsksAgainWhereOneWordIsUnsure() {
    Utterance utterance = Utterance.of(List.of(Word.of("seven"), new Word("two", 0.45, 300, 600)));

    assertThat(Credibility.of(utterance, Credibility.Limits.usual()).signs())
        .containsExactly(Sign.UNSURE_WORD);
  }

  @Test
  void ofBelievesTypedWords() {
    Utterance utterance = Utterance.of("nine two five six two four seven zero one");

    assertThat(Credibility.of(utterance, Credibility.Limits.usual()).signs()).isEmpty();
  }

  private static Credibility of(String words, int voicedMillis, int aboveNoise) {
    List<Word> all =
        Arrays.stream(words.split(" ")).filter(w -> !w.isEmpty()).map(Word::of).toList();
    Utterance utterance = new Utterance(all, -20, Duration.ofMillis(voicedMillis), aboveNoise);
    return Credibility.of(utterance, Credibility.Limits.usual());
  }
}
