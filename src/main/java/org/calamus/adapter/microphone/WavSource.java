package org.calamus.adapter.microphone;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.calamus.port.AudioSource;

/**
 * Plays a WAV recording to the ears as if it were spoken now, for demonstrations, tests and the
 * check of one's own recordings.
 *
 * <p>Any rate, any number of channels and every coding that Java Sound reads (8 to 32 bit, mu-law,
 * A-law) are turned into what the ears want. Ends with {@link AudioSource.Ended} after the last
 * sample. May be opened again after it was closed.
 */
public final class WavSource implements AudioSource {

  /** How fast the recording is played. */
  public enum Pace {
    /** As it was spoken: a block is given when its last sample would have been heard. */
    LIVE,
    /** As fast as it is read. */
    FAST
  }

  private static final int BLOCKS_A_SECOND = 20;

  /** What claims more than this is a damaged file. */
  private static final int MOST_CHANNELS = 32;

  private static final int HIGHEST_RATE = 384_000;

  /** More full-scale samples than this are clipped speech, not chance; from memory. */
  private static final double CLIPPED_PART = 0.01;

  private final String name;
  private final Content content;
  private final Pace pace;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition closing = lock.newCondition();
  private boolean isClosed = true;
  private Optional<AudioInputStream> stream = Optional.empty();
  private Optional<Resampler> resampler = Optional.empty();
  private Optional<String> warning = Optional.empty();
  private long openedNanos;
  private long given;

  /** Gives the bytes of the recording from their start. */
  @FunctionalInterface
  private interface Content {
    InputStream read() throws IOException;
  }

  /**
   * A recording in a file.
   *
   * @param file the WAV file; read when opened
   * @param pace how fast it is played
   */
  public WavSource(Path file, Pace pace) {
    this(String.valueOf(file.getFileName()), () -> Files.newInputStream(file), pace);
  }

  /**
   * A recording in memory.
   *
   * @param name a name for the screen and for messages
   * @param wav the bytes of a WAV file; copied
   * @param pace how fast it is played
   */
  public WavSource(String name, byte[] wav, Pace pace) {
    this(name, bytesOf(wav), pace);
  }

  private WavSource(String name, Content content, Pace pace) {
    this.name = name;
    this.content = content;
    this.pace = pace;
  }

  private static Content bytesOf(byte[] wav) {
    byte[] copy = wav.clone();
    return () -> new ByteArrayInputStream(copy);
  }

  /**
   * Opens the recording and looks through it once.
   *
   * @throws AudioException where it is missing, empty or no WAV recording
   */
  @Override
  public void open() {
    close();
    try (AudioInputStream scanned = decoded()) {
      warning = warningFor(scanned);
    } catch (IOException e) {
      throw unreadable(e);
    }
    lock.lock();
    try {
      AudioInputStream opened = decoded();
      stream = Optional.of(opened);
      resampler = Optional.of(new Resampler(Math.round(opened.getFormat().getSampleRate()), RATE));
      openedNanos = System.nanoTime();
      given = 0;
      isClosed = false;
    } finally {
      lock.unlock();
    }
  }

  /**
   * What is doubtful about the recording though it can be played: one sentence, where there is
   * something. Known once it is open.
   */
  public Optional<String> warning() {
    return warning;
  }

  @Override
  public Read read() {
    lock.lock();
    try {
      if (isClosed || stream.isEmpty() || resampler.isEmpty()) {
        return new Ended();
      }
      short[] samples = next(stream.get(), resampler.get());
      given += samples.length;
      if (samples.length == 0 || !isTimeCome()) {
        return new Ended();
      }
      return new Block(samples);
    } catch (IOException e) {
      return new Lost("The recording " + name + " could not be read to its end; copy it again.");
    } finally {
      lock.unlock();
    }
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public void close() {
    lock.lock();
    try {
      isClosed = true;
      closing.signalAll();
      if (stream.isPresent()) {
        stream.get().close();
      }
      stream = Optional.empty();
    } catch (IOException e) {
      // only read from: nothing is lost when its closing fails
      stream = Optional.empty();
    } finally {
      lock.unlock();
    }
  }

  private short[] next(AudioInputStream in, Resampler filter) throws IOException {
    short[] mono = block(in);
    if (mono.length > 0) {
      short[] samples = filter.take(mono);
      return samples.length > 0 ? samples : next(in, filter);
    }
    resampler = Optional.of(new Resampler(1, 1));
    return filter.rest();
  }

  private static short[] block(AudioInputStream in) throws IOException {
    AudioFormat format = in.getFormat();
    int frames = Math.max(1, Math.round(format.getSampleRate()) / BLOCKS_A_SECOND);
    byte[] bytes = new byte[frames * format.getFrameSize()];
    int length = 0;
    int more = in.read(bytes);
    // a damaged recording gives 0 for ever, where a whole one gives -1 at its end
    while (more > 0 && length + more < bytes.length) {
      length += more;
      more = in.read(bytes, length, bytes.length - length);
    }
    return PcmMono.mix(bytes, length + Math.max(0, more), format.getChannels());
  }

  /** Waits until the samples given would have been heard; false where it was closed meanwhile. */
  private boolean isTimeCome() {
    long due = openedNanos + given * TimeUnit.SECONDS.toNanos(1) / RATE;
    long left = due - System.nanoTime();
    while (pace == Pace.LIVE && left > 0 && !isClosed) {
      try {
        left = Math.min(closing.awaitNanos(left), due - System.nanoTime());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return false;
      }
    }
    return !isClosed;
  }

  private AudioInputStream decoded() {
    try {
      InputStream raw = new BufferedInputStream(content.read());
      AudioInputStream in = AudioSystem.getAudioInputStream(raw);
      AudioFormat given = in.getFormat();
      return AudioSystem.getAudioInputStream(plain(given), in);
    } catch (NoSuchFileException e) {
      throw new AudioException("There is no recording " + name + "; check its name and folder.", e);
    } catch (UnsupportedAudioFileException | IllegalArgumentException | ArithmeticException e) {
      throw new AudioException(
          "The file "
              + name
              + " is not a WAV recording that can be read; save it as 16 bit PCM WAV.",
          e);
    } catch (IOException e) {
      throw unreadable(e);
    }
  }

  private AudioFormat plain(AudioFormat given) {
    int channels = given.getChannels();
    float rate = given.getSampleRate();
    if (channels < 1 || channels > MOST_CHANNELS || !(rate >= 1 && rate <= HIGHEST_RATE)) {
      throw new IllegalArgumentException("no plausible format: " + given);
    }
    return new AudioFormat(
        AudioFormat.Encoding.PCM_SIGNED, rate, 16, channels, 2 * channels, rate, false);
  }

  private Optional<String> warningFor(AudioInputStream in) throws IOException {
    long all = 0;
    long full = 0;
    for (short[] mono = block(in); mono.length > 0; mono = block(in)) {
      all += mono.length;
      for (short sample : mono) {
        full += Math.abs((int) sample) >= Short.MAX_VALUE - 1 ? 1 : 0;
      }
    }
    if (all == 0) {
      throw new AudioException(
          "The recording " + name + " has no sound in it; record it again.",
          new IOException("no frames"));
    }
    return full > CLIPPED_PART * all
        ? Optional.of(
            "The recording "
                + name
                + " is clipped and may be misheard; record it at a lower level.")
        : Optional.empty();
  }

  private AudioException unreadable(IOException cause) {
    return new AudioException(
        "The recording " + name + " cannot be read; check that it is whole and may be read.",
        cause);
  }
}
