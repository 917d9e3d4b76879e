package org.calamus.adapter.vosk;

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

  private VoskLibrary() {}

  /**
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
  }
}
