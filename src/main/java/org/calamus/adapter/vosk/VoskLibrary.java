package org.calamus.adapter.vosk;

<<<<<<< HEAD
import com.sun.jna.Function;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.nio.file.Path;
import java.util.Optional;
import org.vosk.LibVosk;

/** Makes the native library ready before its first use, once a process. */
final class VoskLibrary {

  private static final int STANDARD_ERROR = 2;
  private static boolean isErrorMoved;
=======
import com.sun.jna.Native;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.calamus.acoustic.WordProblem;
import org.calamus.acoustic.WordToBuild;
import org.vosk.LibVosk;
import org.vosk.LogLevel;
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
    // Without this, text goes to and from the library in the system's own encoding. It is read
    // once, when the first native class loads.
    if (System.getProperty("jna.encoding") == null) {
      System.setProperty("jna.encoding", "UTF-8");
    }
    LibVosk.setLogLevel(LogLevel.WARNINGS);
  }

  /** The one function the library's Java classes do not bind. */
  private static final class Unbound {

    static {
      Native.register(Unbound.class, Platform.isWindows() ? "libvosk" : "vosk");
    }

    static native int vosk_model_find_word(Pointer model, String word);
  }
>>>>>>> acoustic

  private VoskLibrary() {}

  /**
<<<<<<< HEAD
   * Loads the library, quietly.
   *
   * @param log where native code shall write its errors instead of on the screen; only on Linux and
   *     macOS, and only the first one given counts
   * @throws UnsatisfiedLinkError where there is no library for this computer
   */
  static synchronized void load(Optional<Path> log) {
    // read once, when JNA loads; words with accents would come out garbled otherwise
    System.setProperty("jna.encoding", "UTF-8");
    useDecimalPoint();
    log.ifPresent(VoskLibrary::moveStandardError);
    // below the levels that LogLevel names; errors are still written
    LibVosk.vosk_set_log_level(-1);
  }

  /**
   * Java sets the locale of C to the user's. In a country of decimal commas the library would then
   * misread its settings and write numbers that are no JSON.
   */
  private static void useDecimalPoint() {
    int numeric = Platform.isLinux() ? 1 : 4; // LC_NUMERIC of glibc, of macOS and Windows
    Function set = NativeLibrary.getInstance(Platform.C_LIBRARY_NAME).getFunction("setlocale");
    set.invokePointer(new Object[] {numeric, "C"});
  }

  private static void moveStandardError(Path log) {
    if (isErrorMoved || !(Platform.isLinux() || Platform.isMac())) {
      return;
    }
    NativeLibrary c = NativeLibrary.getInstance(Platform.C_LIBRARY_NAME);
    Pointer file =
        c.getFunction("fopen").invokePointer(new Object[] {log.toAbsolutePath().toString(), "a"});
    if (file != null) {
      int descriptor = c.getFunction("fileno").invokeInt(new Object[] {file});
      c.getFunction("dup2").invokeInt(new Object[] {descriptor, STANDARD_ERROR});
      isErrorMoved = true;
    }
=======
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
>>>>>>> acoustic
  }
}
