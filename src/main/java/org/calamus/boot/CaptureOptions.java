package org.calamus.boot;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options of the live console. */
final class CaptureOptions {

  @Option(
      names = "--listen",
      paramLabel = "WAV",
      description = "Hears recordings instead of the microphone; give it once for each.")
  private List<Path> recordings = List.of();

  @Option(names = "--keypad", description = "Does not listen at all: the keypad alone.")
  private boolean isKeypadOnly;

  @Option(names = "--quiet", description = "Does not speak: readback on the screen alone.")
  private boolean isQuiet;

  @Option(names = "--no-tones", description = "Speaks, but without the short tones.")
  private boolean isToneless;

  @Option(
      names = "--scale",
      paramLabel = "PORT=DEVICE",
      description = "An instrument, such as /dev/ttyUSB0=two-letter-header; may be repeated.")
  private List<String> instruments = List.of();

  @Option(names = "--bander", paramLabel = "INITIALS", description = "The bander's initials.")
  private String bander;

  @Option(names = "--place", paramLabel = "NAME", description = "The station's name.")
  private String place;

  @Option(
      names = "--keep-utterances",
      description = "Keeps what is said at the table, as sound in the data folder, for replay.")
  private boolean isKeeping;

  List<Path> recordings() {
    return recordings;
  }

  boolean isKeypadOnly() {
    return isKeypadOnly;
  }

  boolean isQuiet() {
    return isQuiet;
  }

  boolean isToneless() {
    return isToneless;
  }

  List<String> instruments() {
    return instruments;
  }

  Optional<String> bander() {
    return Optional.ofNullable(bander);
  }

  Optional<String> place() {
    return Optional.ofNullable(place);
  }

  boolean isKeeping() {
    return isKeeping;
  }
}
