package org.calamus.adapter.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Hypothesis;
import org.calamus.core.speech.Word;
import org.calamus.port.AudioSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** "Save record", spoken, and what is heard of the whole of it and of its first word. */
class PhrasesHeardTest {

  private static final List<WordToBuild> WORDS =
      List.of(WordToBuild.plain("save", "test"), WordToBuild.plain("record", "test"));
  private static final Grammar GRAMMAR = new Grammar("test", List.of("save record", "[unk]"));

  @TempDir private static Path cache;

  private static short[] sound;
  private static List<Word> apart;

  @BeforeAll
  static void listenForWordsApart() {
    sound = Sounds.recording("slt-save-record");
    apart = heard(WORDS, sound);
  }

  @Test
  void phraseIsHeardAsItsWords() {
    List<Word> words = heard(withPhrase(), sound);

    assertThat(words).extracting(Word::text).containsExactly("save", "record");
    assertThat(words.get(0).endMillis()).isEqualTo(words.get(1).startMillis());
  }

  @Test
  void pauseWithinAPhraseIsAllowed() {
    int seam = (int) (apart.get(0).endMillis() * AudioSource.RATE / 1000);
    short[] paused = new short[sound.length + AudioSource.RATE / 4];
    System.arraycopy(sound, 0, paused, 0, seam);
    for (int i = 0; i < AudioSource.RATE / 4; i++) {
      paused[seam + i] = (short) (i % 5 - 2);
    }
    System.arraycopy(sound, seam, paused, seam + AudioSource.RATE / 4, sound.length - seam);

    assertThat(heard(withPhrase(), paused))
        .extracting(Word::text)
        .containsExactly("save", "record");
  }

  @Test
  void firstWordAloneIsHeardOnlyWhereThereIsNoPhrase() {
    short[] first =
        Arrays.copyOf(sound, (int) (apart.get(0).endMillis() * AudioSource.RATE / 1000));

    assertThat(heard(WORDS, first)).extracting(Word::text).contains("save");
    assertThat(heard(withPhrase(), first)).extracting(Word::text).doesNotContain("save");
  }

  private static List<WordToBuild> withPhrase() {
    List<WordToBuild> words = new ArrayList<>(WORDS);
    words.add(WordToBuild.phrase(List.of("save", "record"), "test"));
    return words;
  }

  private static List<Word> heard(List<WordToBuild> words, short[] sound) {
    try (ModelFolder folder = new ModelCache(cache).open(words, Settings.standard());
        VoskRecogniser recogniser = new VoskRecogniser(folder.path(), VoskEars.Settings.usual())) {
      List<Hypothesis> heard = recogniser.recognise(GRAMMAR, sound);
      return heard.isEmpty() ? List.of() : heard.get(0).words();
    }
  }
}
