package org.calamus.support;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.opentest4j.TestAbortedException;

/**
 * Programs and files from outside the build that some tests compare with.
 *
 * <p>On a machine that lacks one the test is reported as skipped, with the reason. Where {@code
 * CALAMUS_REQUIRE_OUTSIDE} is set (continuous integration sets it, having installed them all) a
 * missing one is a failure, so that no check is lost unseen.
 */
public final class Outside {

  private Outside() {}

  /** Finds a program on the PATH, or skips (or fails) the running test. */
  public static Path program(String name) {
    for (String folder :
        List.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))) {
      Path candidate = Path.of(folder, name);
      if (Files.isExecutable(candidate)) {
        return candidate;
      }
    }
    throw missing("the program " + name);
  }

  /** Checks that a file or folder exists, or skips (or fails) the running test. */
  public static Path file(String path) {
    Path file = Path.of(path);
    if (Files.exists(file)) {
      return file;
    }
    throw missing(path);
  }

  /**
   * The end of a test that lacks something else of the machine.
   *
   * @param what what is not there
   * @return what to throw: the test is skipped, or fails where nothing may be missing
   */
  public static RuntimeException missing(String what) {
    String message = what + " is not on this machine";
    if (System.getenv("CALAMUS_REQUIRE_OUTSIDE") != null) {
      throw new AssertionError(message + ", and CALAMUS_REQUIRE_OUTSIDE is set");
    }
    return new TestAbortedException(message);
  }
}
