package org.calamus.adapter.microphone;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
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
 * as {@link AudioSource.Lost}; {@link #open} may then be called again.
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

  private static final int BLOCKS_A_SECOND = 20;
  private static final Duration LOOK_AGAIN = Duration.ofMillis(5);

  /** Some sound servers give their first sound only after 2 s. */
  private static final Duration PATIENCE = Duration.ofSeconds(4);

  /** The read of a line whose server died gives 0 at once, for ever. */
  private static final int EMPTY_READS_MEANING_LOST = 3;

  private static final String STOPPED =
      "The microphone stopped; plug it in again or check the sound settings.";

  private final Optional<String> mixerName;
  private volatile Optional<TargetDataLine> line = Optional.empty();
  private volatile String name = "microphone";
  private Resampler resampler = new Resampler(RATE, RATE);
  private byte[] buffer = new byte[0];

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

  /** {@inheritDoc} Closes the line first where it is open. */
  @Override
  public void open() {
    close();
    TargetDataLine opened = openFirst();
    AudioFormat real = opened.getFormat();
    int rate = Math.round(real.getSampleRate());
    resampler = new Resampler(rate, RATE);
    buffer = new byte[rate / BLOCKS_A_SECOND * real.getFrameSize()];
    opened.start();
    line = Optional.of(opened);
  }

  @Override
  public Read read() {
    Optional<TargetDataLine> open = line;
    if (open.isEmpty()) {
      return new Ended();
    }
    TargetDataLine in = open.get();
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    int emptyReads = 0;
    while (line.isPresent() && System.nanoTime() < deadline) {
      // not a waiting read: that of a line whose device hangs would never return
      if (in.available() < buffer.length) {
        LockSupport.parkNanos(LOOK_AGAIN.toNanos());
        continue;
      }
      int length = in.read(buffer, 0, buffer.length);
      if (length > 0) {
        short[] mono = PcmMono.mix(buffer, length, in.getFormat().getChannels());
        return new Block(resampler.take(mono));
      }
      if (++emptyReads == EMPTY_READS_MEANING_LOST) {
        break;
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
    return line.isEmpty() ? new Ended() : new Lost(STOPPED);
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public void close() {
    Optional<TargetDataLine> open = line;
    line = Optional.empty();
    open.ifPresent(
        it -> {
          it.stop();
          it.close();
        });
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
