package org.calamus.adapter.vosk;

import com.sun.jna.Function;
import com.sun.jna.NativeLibrary;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.nio.file.Path;
import java.util.Optional;

/** What native code finds when it runs: its numbers, its texts and where its errors go. */
final class NativeEnvironment {

  private static final int STANDARD_ERROR = 2;
  private static boolean isErrorMoved;

  private NativeEnvironment() {}

  /**
   * Makes ready for the native library; to be called before any of its classes loads.
   *
   * @param log where native code shall write its errors instead of on the screen; only on Linux and
   *     macOS, and only the first one given counts
   */
  static synchronized void prepare(Optional<Path> log) {
    // read once, when JNA loads; words with accents would come out garbled otherwise
    System.setProperty("jna.encoding", "UTF-8");
    useDecimalPoint();
    log.ifPresent(NativeEnvironment::moveStandardError);
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
