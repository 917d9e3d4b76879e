package org.calamus.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModelBuilderTest {

  private static ModelFiles build(List<WordToBuild> words) {
    return ModelBuilder.build(
        SampleTables.tables(), SampleTables.dictionary(), words, Settings.standard());
  }

  private static String text(ModelFiles model, String path) {
    return new String(model.files().get(path), StandardCharsets.UTF_8);
  }

  @Test
  void twoBuildsAreEqualToTheByte() {
    ModelFiles first = build(SampleTables.words());
    ModelFiles second = build(SampleTables.words());
    assertThat(second.files().keySet()).isEqualTo(first.files().keySet());
    first
        .files()
        .forEach((path, bytes) -> assertThat(second.files().get(path)).as(path).isEqualTo(bytes));
  }

  @Test
  void modelHasAllFilesAndAllWords() {
    ModelFiles model = build(SampleTables.words());
    assertThat(model.files().keySet())
        .containsExactly(
            "am/final.mdl",
            "am/global_cmvn.stats",
            "conf/mfcc.conf",
            "conf/model.conf",
            "graph/Gr.fst",
            "graph/HCLr.fst",
            "graph/disambig_tid.int",
            "graph/phones/word_boundary.int",
            "graph/words.txt");
    List<String> words =
        text(model, "graph/words.txt").lines().map(line -> line.split(" ")[0]).toList();
    assertThat(words).startsWith("<eps>", "<s>", "</s>", "#0", "[unk]", "!sil");
    assertThat(words)
        .containsAll(SampleTables.words().stream().map(WordToBuild::word).toList())
        .doesNotHaveDuplicates();
  }

  @Test
  void everyWordWithoutPronunciationIsNamedWithItsPlace() {
    List<WordToBuild> words =
        List.of(
            WordToBuild.plain("wing", "fields.words:1"),
            WordToBuild.plain("xyzzyx", "places.words:7"),
            WordToBuild.plain("qwertz", "places.words:9"));
    UnusableWordsException failure =
        catchThrowableOfType(UnusableWordsException.class, () -> build(words));
    assertThat(failure.problems())
        .extracting(WordProblem::word, WordProblem::where)
        .containsExactly(tuple("xyzzyx", "places.words:7"), tuple("qwertz", "places.words:9"));
    assertThat(failure)
        .hasMessageContaining(
            "places.words:7: \"xyzzyx\" is not in the pronouncing dictionary: write its"
                + " pronunciation beside it");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          vireo    | V IH R IX OW | with no phone IX
          vireo    | v ih r iy ow | with no phone v
          vireo    | SIL          | with no phone SIL
          two words| T UW         | is not one word
          #0       | T UW         | is a mark of the recogniser
          wing_two | T UW         | is taken for a phrase
          """)
  void unusableWordsSayWhy(String word, String pronunciation, String why) {
    WordToBuild given =
        new WordToBuild(word, List.of(pronunciation), Optional.empty(), "birds.words:3");
    assertThatThrownBy(() -> build(List.of(given)))
        .isInstanceOf(UnusableWordsException.class)
        .hasMessageContaining("birds.words:3: \"" + word + "\"")
        .hasMessageContaining(why);
  }

  @Test
  void pronunciationGivenOnceServesTheWordEverywhere() {
    ModelFiles model =
        build(
            List.of(
                WordToBuild.plain("vireo", "a.words:1"),
                new WordToBuild("vireo", List.of("V IH R IY OW"), Optional.empty(), "b.words:1")));
    assertThat(text(model, "graph/words.txt").lines().filter(line -> line.startsWith("vireo ")))
        .hasSize(1);
  }

  @Test
  void unknownMarkMayStandAmongTheWords() {
    List<WordToBuild> plain = List.of(WordToBuild.plain("wing", "a.words:1"));
    List<WordToBuild> marked =
        List.of(WordToBuild.plain("[unk]", "a.words:1"), WordToBuild.plain("wing", "a.words:2"));
    assertThat(build(marked).files().get("graph/HCLr.fst"))
        .isEqualTo(build(plain).files().get("graph/HCLr.fst"));
  }

  @Test
  void wordOfOnePhoneCanBePartOfAChain() {
    List<WordToBuild> words =
        List.of(
            WordToBuild.chained("oh", "numbers", "a.words:1"),
            WordToBuild.chained("two", "numbers", "a.words:2"));
    FstFile graph = FstFile.read(build(words).files().get("graph/HCLr.fst"));
    long starts =
        graph.arcs().stream().flatMap(List::stream).filter(arc -> arc.output() == 6).count();
    assertThat(starts).as("variants of \"oh\"").isGreaterThan(1);
  }

  @Test
  void phraseIsOneWordWithAPauseInItOrNone() {
    List<WordToBuild> words =
        List.of(
            WordToBuild.plain("wing", "a.words:1"),
            WordToBuild.plain("chord", "a.words:1"),
            WordToBuild.phrase(List.of("wing", "chord"), "a.words:1"));
    ModelFiles model = build(words);
    List<String> names =
        text(model, "graph/words.txt").lines().map(line -> line.split(" ")[0]).toList();
    assertThat(names.subList(6, names.size())).containsExactly("chord", "wing", "wing_chord");
    assertThat(text(model, "graph/phones/word_boundary.int").lines())
        .contains("1 nonword", "4 internal", "5 begin");
    // the label is on the first step of each way, of which this phrase has one
    FstFile graph = FstFile.read(model.files().get("graph/HCLr.fst"));
    assertThat(graph.arcs().stream().flatMap(List::stream).filter(arc -> arc.output() == 8))
        .hasSize(1);
  }

  @Test
  void phraseOfUnknownWordsIsNoWorseThanTheWords() {
    List<WordToBuild> words =
        List.of(
            WordToBuild.plain("wing", "a.words:1"),
            WordToBuild.plain("xyzzyx", "a.words:1"),
            WordToBuild.phrase(List.of("wing", "xyzzyx"), "a.words:1"));
    UnusableWordsException failure =
        catchThrowableOfType(UnusableWordsException.class, () -> build(words));
    assertThat(failure.problems()).extracting(WordProblem::word).containsExactly("xyzzyx");
  }

  @Test
  void endpointRulesReachTheConfiguration() {
    String conf = text(build(SampleTables.words()), "conf/model.conf");
    assertThat(conf.lines())
        .contains(
            "--endpoint.rule1.min-trailing-silence=5.0",
            "--endpoint.rule2.min-trailing-silence=0.9",
            "--endpoint.rule3.min-trailing-silence=0.95",
            "--endpoint.rule4.min-trailing-silence=1.0",
            "--endpoint.rule5.min-utterance-length=20.0",
            "--acoustic-scale=0.12");
  }

  @Test
  void graphFileSaysWhatItHolds() {
    FstFile graph = FstFile.read(build(SampleTables.words()).files().get("graph/HCLr.fst"));
    assertThat(graph.arcs()).hasSizeGreaterThan(5000);
    for (List<FstFile.FstArc> arcs : graph.arcs()) {
      assertThat(arcs).extracting(FstFile.FstArc::output).isSorted();
    }
    assertThat(graph.ends().stream().filter(end -> end == 0f)).hasSize(3);
    assertThat(Arrays.asList(0f, Float.POSITIVE_INFINITY)).containsAll(graph.ends());
  }
}
