package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.calamus.acoustic.SampleTables;
import org.calamus.acoustic.Settings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vosk.Model;

class RecognitionTest {

  @TempDir private static Path cache;

  private static ModelFolder folder;
  private static Model model;

  @BeforeAll
  static void loadModel() {
    folder = new ModelCache(cache).open(SampleTables.words(), Settings.standard());
    model = VoskLibrary.load(folder.path());
  }

  @AfterAll
  static void closeModel() {
    model.close();
    folder.close();
  }

  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          digits-slt.wav,      one two three four five six seven eight nine zero
          digits-kal16.wav,    five one nine
          band-number-rms.wav, two one four seven three eight nine zero six
          wing-slt.wav,        wing ninety two
          wing-awb.wav,        wing ninety two
          spelling-slt.wav,    alpha bravo foxtrot whiskey
          """)
  void wordsOfAllVocabulariesAreHeard(String recording, String said) throws IOException {
    List<String> phrases = new ArrayList<>();
    for (String words :
        List.of(SampleTables.NUMBERS, SampleTables.SPELLING, SampleTables.COMMANDS)) {
      phrases.addAll(List.of(words.split(" ")));
    }
    // "tail" is heard for "two": left out of grammars that take numbers
    phrases.remove("tail");
    phrases.add("[unk]");
    String heard = TestAudio.hear(model, TestAudio.grammar(phrases), TestAudio.samples(recording));
    assertThat(heard).isEqualTo(said);
  }

  @Test
  void speechOutsideTheGrammarIsUnknown() throws IOException {
    String grammar = TestAudio.grammar(List.of("save", "cancel", "[unk]"));
    String heard = TestAudio.hear(model, grammar, TestAudio.samples("spelling-slt.wav"));
    assertThat(heard.split(" ")).containsOnly("[unk]");
  }

  @Test
  void libraryKnowsTheModelsWordsAndNoOthers() {
    assertThat(VoskLibrary.unknownWords(model, SampleTables.words())).isEmpty();
    assertThat(VoskLibrary.knows(model, "[unk]")).isTrue();
    assertThat(VoskLibrary.knows(model, "grackle")).isFalse();
  }
}
