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
      Map.of(
          "mail", List.of("M EY L"),
          "male", List.of("M EY L"),
          "wing", List.of("W IH NG"),
          "nine", List.of("N AY N"),
          "none", List.of("N AH N"),
          "fifty", List.of("F IH F T IY"),
          "fifteen", List.of("F IH F T IY N"),
          "save", List.of("S EY V"),
          "wine", List.of("W AY N", "N IY N"));

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
