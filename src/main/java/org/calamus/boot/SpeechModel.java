package org.calamus.boot;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.calamus.acoustic.AcousticException;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;
import org.calamus.adapter.vosk.ModelCache;
import org.calamus.adapter.vosk.ModelException;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.core.speech.Grammars;
import org.calamus.core.speech.SoundAlikes;
import org.calamus.core.speech.SpokenForm;
import org.calamus.core.speech.Vocabulary;
import org.calamus.core.speech.VocabularyWord;

/** Finds or builds the recogniser's model for a vocabulary. */
public final class SpeechModel {

  private SpeechModel() {}

  /**
   * The model: the user's own where one is given, or else the one built from the shipped tables.
   *
   * @throws Halt with one sentence (one a word, for words that the model cannot have)
   */
  static ModelFolder open(Folders folders, Optional<Path> given, Vocabulary vocabulary) {
    try {
      if (given.isPresent()) {
        ModelFolder own = ModelFolder.ofUser(given.get());
        own.requireWords(words(vocabulary));
        return own;
      }
      return new ModelCache(folders.cache().resolve("model"))
          .open(wordsAndPhrases(vocabulary), Settings.standard());
    } catch (ModelException | AcousticException e) {
      throw new Halt(ExitCode.MISSING, e.getMessage(), e);
    }
  }

  /**
   * Warnings of forms that sound alike, as {@link SoundAlikes} finds them.
   *
   * @param isConcerned which forms are looked at
   */
  static List<String> soundAlikes(Station station, Predicate<SpokenForm> isConcerned) {
    Vocabulary vocabulary = station.vocabulary().within(station.form());
    return new SoundAlikes(ModelCache.pronunciations(words(vocabulary)))
        .warnings(new Grammars(vocabulary), station.form().fields(), isConcerned);
  }

  private static List<WordToBuild> words(Vocabulary vocabulary) {
    return vocabulary.wordsToPronounce().stream().map(SpeechModel::word).toList();
  }

  /**
   * What the built model knows: the words of a vocabulary, and its phrases, each of which it hears
   * whole or not at all. A model of others has no phrases.
   *
   * @param vocabulary all that can be said
   */
  public static List<WordToBuild> wordsAndPhrases(Vocabulary vocabulary) {
    List<WordToBuild> all = new ArrayList<>(words(vocabulary));
    vocabulary.phrases().forEach(p -> all.add(WordToBuild.phrase(p.words(), p.where())));
    return all;
  }

  private static WordToBuild word(VocabularyWord word) {
    Optional<String> chain = word.chain().isEmpty() ? Optional.empty() : Optional.of(word.chain());
    return new WordToBuild(word.word(), word.pronunciations(), chain, word.where());
  }
}
