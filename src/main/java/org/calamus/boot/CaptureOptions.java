package org.calamus.boot;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Heed;
import org.calamus.core.dialogue.Talk;
import org.calamus.port.Protocol;
import org.calamus.port.StationSettings;
import org.calamus.port.ToneSettings;
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

  @Option(
      names = "--tone-volume",
      paramLabel = "PERCENT",
      description = "How loud the short tones are, 1 to 100 percent.")
  private Integer tonePercent;

  @Option(
      names = "--talk",
      paramLabel = "WAY",
      description = "open: the ears are open; key: only when the talk key is pressed.")
  private Talk talk;

  @Option(names = "--no-tones", description = "Speaks, but without the short tones.")
  private boolean isToneless;

  @Option(
      names = "--scale",
      paramLabel = "PORT=DEVICE",
      description = "An instrument, such as /dev/ttyUSB0=two-letter-header; may be repeated.")
  private List<String> instruments = List.of();

  @Option(names = "--bander", paramLabel = "INITIALS", description = "The bander's initials.")
  private String bander;

  @Option(
      names = "--scribe",
      paramLabel = "INITIALS",
      description = "The initials of who writes; the records get them.")
  private String scribe;

  @Option(names = "--place", paramLabel = "NAME", description = "The station's name.")
  private String place;

  @Option(
      names = "--keep-utterances",
      description = "Keeps what is said at the table, as sound in the data folder, for replay.")
  private boolean isKeeping;

  @Option(
      names = "--forget-voice",
      description = "Learns nothing of the bander's voice, and uses nothing learnt before.")
  private boolean isVoiceForgotten;

  List<Path> recordings() {
    return recordings;
  }

  boolean isKeypadOnly() {
    return isKeypadOnly;
  }

  boolean isQuiet() {
    return isQuiet;
  }

  /**
   * How the tones sound.
   *
   * @param written what the station wrote, which holds where nothing else was asked for
   * @throws Halt where the volume is none
   */
  ToneSettings tones(ToneSettings written) {
    Optional<Integer> percent = Optional.ofNullable(tonePercent);
    if (percent.filter(p -> p < 1 || p > 100).isPresent()) {
      throw new Halt(
          ExitCode.WRONG_USE,
          "--tone-volume " + percent.get() + " is not 1 to 100; --no-tones leaves them out.",
          null);
    }
    ToneSettings wanted = percent.map(p -> new ToneSettings(written.isOn(), p)).orElse(written);
    return isToneless ? wanted.off() : wanted;
  }

  List<String> instruments() {
    return instruments;
  }

  /** The station's settings, with what was asked for on the command line in their place. */
  StationSettings over(StationSettings written) {
    Heed heed = Optional.ofNullable(talk).map(written.heed()::talking).orElse(written.heed());
    Protocol protocol =
        written.protocol().writtenBy(Optional.ofNullable(scribe).or(written.protocol()::scribe));
    return written
        .called(
            Optional.ofNullable(place).orElse(written.place()),
            Optional.ofNullable(bander).orElse(written.bander()))
        .withProtocol(protocol)
        .heeding(heed);
  }

  boolean isVoiceForgotten() {
    return isVoiceForgotten;
  }

  boolean isKeeping() {
    return isKeeping;
  }
}
