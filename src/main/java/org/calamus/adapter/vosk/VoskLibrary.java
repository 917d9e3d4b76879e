package org.calamus.adapter.vosk;

import com.sun.jna.Native;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.acoustic.WordProblem;
import org.calamus.acoustic.WordToBuild;
import org.vosk.LibVosk;
import org.vosk.Model;

/**
 * The native recogniser library: how models are loaded, and what its Java classes leave out.
 *
 * <p>All Vosk objects must come from here, for this class sets up what has to be set up before the
 * first of them.
 */
final class VoskLibrary {

  private static final String UNKNOWN = "[unk]";

  static {
    NativeEnvironment.prepare(Optional.empty());
    // below the levels that the library's Java classes name: warnings would spoil the screen
    LibVosk.vosk_set_log_level(-1);
  }

  /** The one function the library's Java classes do not bind. */
  private static final class Unbound {

    static {
      Native.register(Unbound.class, Platform.isWindows() ? "libvosk" : "vosk");
    }

    static native int vosk_model_find_word(Pointer model, String word);
  }

  private VoskLibrary() {}

  /** Loads the native library, as the first use of this class does, and nothing more. */
  static void initialise() {
    // the work is in the class' own initialisation
  }

  /**
   * Loads a model; the caller closes it, after all of its recognisers.
   *
   * @throws ModelException when the folder holds none
   */
  static Model load(Path folder) {
    try {
      return new Model(folder.toString());
    } catch (IOException e) {
      throw new ModelException(
          "The speech model in " + folder + " cannot be loaded: it is damaged or of another kind.",
          e);
    }
  }

  /** Whether a model can recognise a word; grammars leave out silently what it does not know. */
  static boolean knows(Model model, String word) {
    return Unbound.vosk_model_find_word(model.getPointer(), word) >= 0;
  }

  /** Names the words a model does not know, and "[unk]" if it has no such entry. */
  static List<WordProblem> unknownWords(Model model, List<WordToBuild> words) {
    List<WordProblem> problems = new ArrayList<>();
    if (!knows(model, UNKNOWN)) {
      problems.add(
          new WordProblem(
              UNKNOWN, "the speech model", "is missing: it could not tell other speech apart"));
    }
    for (WordToBuild word : words) {
      if (!word.word().equals(UNKNOWN) && !knows(model, word.word())) {
        problems.add(
            new WordProblem(word.word(), word.where(), "is not known to the speech model"));
      }
    }
    return problems;
  }

  /** Loads the library on a thread of its own; where there is none, that is told later. */
  static void loadAhead(Optional<Path> log) {
    Thread loading =
        new Thread(
            () -> {
              try {
                NativeEnvironment.prepare(log);
                initialise();
              } catch (UnsatisfiedLinkError | NoClassDefFoundError noLibrary) {
                return; // told when the ears start
              }
            },
            "loading recogniser");
    loading.setDaemon(true);
    loading.start();
  }
}
