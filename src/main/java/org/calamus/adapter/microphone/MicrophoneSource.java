package org.calamus.adapter.microphone;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;
import org.calamus.port.AudioSource;

/**
 * The microphone of the computer, through Java Sound.
 *
 * <p>Opens the default line, or the first one of a named mixer, in the first of a list of formats
 * that it takes, then goes by the format that the open line reports. A line that stops is reported
 * as {@link AudioSource.Lost}; {@link #open} may then be called again. Nobody waits here for a line
 * that does not answer.
 */
public final class MicrophoneSource implements AudioSource {

  /** 48 kHz first: most sound cards work at it, and our own filter is better than a driver's. */
  private static final List<AudioFormat> FORMATS =
      List.of(
          format(48_000, 1),
          format(48_000, 2),
          format(44_100, 1),
          format(44_100, 2),
          format(RATE, 1),
          format(RATE, 2),
          format(32_000, 1),
          format(8_000, 1));

  /** Where Linux tells which program holds a sound card; other systems have no such folder. */
  private static final Path PROC = Path.of("/proc");

  /** Some sound servers give their first sound only after 2 s. */
  private static final Duration PATIENCE = Duration.ofSeconds(4);

  /** A line that is at its opening for so long is given up for another try. */
  private static final Duration STUCK = Duration.ofSeconds(60);

  private static final String STOPPED =
      "The microphone stopped; plug it in again or check the sound settings.";

  private final Optional<String> mixerName;
  private volatile Optional<LineReader> line = Optional.empty();
  private volatile Optional<LineReader> pending = Optional.empty();
  private volatile boolean isClosed;
  private volatile String name = "microphone";
  private Resampler resampler = new Resampler(RATE, RATE);

  /** The default microphone. */
  public MicrophoneSource() {
    this.mixerName = Optional.empty();
  }

  /**
   * The microphone of one sound card.
   *
   * @param mixerName a part of the name under which Java Sound lists it; capitals do not matter
   */
  public MicrophoneSource(String mixerName) {
    this.mixerName = Optional.of(mixerName);
  }

  /**
   * {@inheritDoc} Closes the line first where it is open. A line that takes long to open is waited
   * for again by the next call.
   */
  @Override
  public void open() {
    isClosed = false;
    line.ifPresent(LineReader::end);
    line = Optional.empty();
    LineReader reader = reader();
    Optional<AudioFormat> format = reader.open();
    format.ifPresent(f -> resampler = new Resampler(Math.round(f.getSampleRate()), RATE));
    line = Optional.of(reader).filter(r -> format.isPresent());
    pending = Optional.of(reader).filter(r -> format.isEmpty());
    if (isClosed) {
      close();
    }
    if (format.isEmpty()) {
      throw noAnswer();
    }
  }

  /** The one that is at its opening still, or a new one where there is none or it is stuck. */
  private LineReader reader() {
    Optional<LineReader> opening = pending;
    pending = Optional.empty();
    if (opening.isPresent() && !opening.get().isOpeningFor(STUCK)) {
      return opening.get();
    }
    opening.ifPresent(LineReader::abandon);
    return new LineReader(this::openFirst, PATIENCE);
  }

  @Override
  public Read read() {
    Optional<LineReader> open = line;
    if (open.isEmpty()) {
      return new Ended();
    }
    Optional<short[]> mono = open.get().next();
    if (mono.isPresent()) {
      return new Block(resampler.take(mono.get()));
    }
    return line.isEmpty() ? new Ended() : new Lost(STOPPED);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public void close() {
    isClosed = true;
    Optional<LineReader> open = line;
    line = Optional.empty();
    open.ifPresent(LineReader::end);
    pending.ifPresent(LineReader::abandon);
    pending = Optional.empty();
  }

  private static AudioException noAnswer() {
    return new AudioException(
        "The microphone does not answer; plug it in again, or restart the sound of the computer.",
        new TimeoutException());
  }

  private TargetDataLine openFirst() {
    Optional<Mixer.Info> mixer = mixer();
    name = mixer.map(Mixer.Info::getName).orElse("microphone");
    Optional<Exception> last = Optional.empty();
    for (AudioFormat format : FORMATS) {
      try {
        TargetDataLine candidate = lineFor(mixer, format);
        // a quarter of a second: enough for a busy moment, and no latency of its own
        candidate.open(format, (int) format.getSampleRate() / 4 * format.getFrameSize());
        return candidate;
      } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
        // Java Sound throws the unchecked one where there is no sound card at all
        last = Optional.of(e);
      }
    }
    throw NotOpened.because(last.orElseThrow(), new CaptureUse(PROC).program());
  }

  private static TargetDataLine lineFor(Optional<Mixer.Info> mixer, AudioFormat format)
      throws LineUnavailableException {
    DataLine.Info wanted = new DataLine.Info(TargetDataLine.class, format);
    return (TargetDataLine)
        (mixer.isPresent()
            ? AudioSystem.getMixer(mixer.get()).getLine(wanted)
            : AudioSystem.getLine(wanted));
  }

  private Optional<Mixer.Info> mixer() {
    if (mixerName.isEmpty()) {
      return Optional.empty();
    }
    String wanted = mixerName.get().toLowerCase(Locale.ROOT);
    return Optional.of(
        Arrays.stream(AudioSystem.getMixerInfo())
            .filter(info -> info.getName().toLowerCase(Locale.ROOT).contains(wanted))
            .filter(info -> AudioSystem.getMixer(info).getTargetLineInfo().length > 0)
            .findFirst()
            .orElseThrow(
                () ->
                    new AudioException(
                        "There is no microphone named "
                            + mixerName.get()
                            + "; check its name in the settings.",
                        new IllegalArgumentException(mixerName.get()))));
  }

  private static AudioFormat format(float rate, int channels) {
    return new AudioFormat(rate, 16, channels, true, false);
  }
}
