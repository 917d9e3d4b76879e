package org.calamus.core.speech;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.calamus.support.Fenwick;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SoundAlikesTest {

  private static final Map<String, List<String>> SAID =
      Map.ofEntries(
          Map.entry("mail", List.of("M EY L")),
          Map.entry("male", List.of("M EY L")),
          Map.entry("wing", List.of("W IH NG")),
          Map.entry("nine", List.of("N AY N")),
          Map.entry("none", List.of("N AH N")),
          Map.entry("fifty", List.of("F IH F T IY")),
          Map.entry("fifteen", List.of("F IH F T IY N")),
          Map.entry("save", List.of("S EY V")),
          Map.entry("wine", List.of("W AY N", "N IY N")),
          Map.entry("sixteen", List.of("S IH K S T IY N")),
          Map.entry("sixteenth", List.of("S IH K S T IY N TH")),
          Map.entry("thirteenth", List.of("TH ER T IY N TH")),
          Map.entry("thirtieth", List.of("TH ER T IY AH TH")),
          Map.entry("november", List.of("N OW V EH M B ER")),
          Map.entry("of", List.of("AH V")));

  private static List<String> warnings(String... lines) {
    List<String> problems = new ArrayList<>();
    Vocabulary vocabulary =
        WordsFile.join(List.of(WordsFile.read("own.words", List.of(lines))), problems);
    assertThat(problems).isEmpty();
    return new SoundAlikes(SAID)
        .warnings(new Grammars(vocabulary), Fenwick.form().fields(), form -> true);
  }

  @Test
  void namesBothPlacesOfFormsThatSoundAlike() {
    assertThat(warnings("male = code sex M", "wing = field wing", "mail = nothing"))
        .containsExactly(
            "own.words:3: \"mail\" sounds like \"male\" (own.words:1); the one may be heard for"
                + " the other. A longer form would be safer.");
  }

  @ParameterizedTest
  @CsvSource({
    "nine = digit 9, none = code * 0, 1",
    "nine = digit 9, wine = nothing, 1",
    "male = code sex M, mail = code sex M, 0",
    "male = code sex M, save = command save, 0",
    "fifty = tens 50, fifteen = number 15, 0",
    "sixteen = number 16, sixteenth = ordinal 16, 0",
    "sixteen = number 17, sixteenth = ordinal 16, 1",
    "thirteenth = ordinal 13, thirtieth = ordinal 30, 0",
    "november = month 11, of november = month 11, 0",
    "wing = field wing, zither = field tail, 0"
  })
  void warnsWhereFormsSoundAlikeAndMeanDifferentThings(String one, String other, int count) {
    assertThat(warnings(one, other)).hasSize(count);
  }

  @Test
  void leavesOutFormsThatAreNeverListenedForAtTheSameTime() {
    // a criterion is listened for while its own field is asked, a short name never with numbers
    assertThat(warnings("nine = digit 9", "section names short", "none = field age")).hasSize(1);
    assertThat(warnings("male = code sex M", "section other written", "mail = field age"))
        .isEmpty();
  }

  @Test
  void looksOnlyAtPairsWithAFormThatIsConcerned() {
    Vocabulary vocabulary =
        WordsFile.join(
            List.of(WordsFile.read("own.words", List.of("nine = digit 9", "none = code * 0"))),
            new ArrayList<>());
    SoundAlikes alikes = new SoundAlikes(SAID);
    assertThat(alikes.warnings(new Grammars(vocabulary), Fenwick.form().fields(), f -> false))
        .isEmpty();
    assertThat(
            alikes.warnings(
                new Grammars(vocabulary), Fenwick.form().fields(), f -> f.text().equals("nine")))
        .singleElement()
        .asString()
        .startsWith("own.words:1: \"nine\"");
  }

  /** Left: heard for each other in recordings, or alike by the ear; right: never. */
  @ParameterizedTest
  @CsvSource({
    "S IH K S, S EH K S, 20",
    "N AY N, N AH N, 20",
    "P AE T, B AE T, 10",
    "S IH K S, S IH K S, 0",
    "T UW, T EY L, 100",
    "W IH NG, M AE S, 100"
  })
  void measuresHowUnlikeTwoPronunciationsAre(String one, String other, int most) {
    int distance = distance(one, other);
    assertThat(distance).isLessThanOrEqualTo(most).isEqualTo(distance(other, one));
    assertThat(distance > 20).isEqualTo(most == 100);
  }

  private static int distance(String one, String other) {
    return PhoneDistance.hundredths(numbers(one), numbers(other), 100);
  }

  private static int[] numbers(String phones) {
    return PhoneDistance.numbers(Arrays.asList(phones.split(" ")));
  }
}
