package org.calamus.port;

/**
 * Sound that the ears can hear: a microphone, a file or a test. Always 16 kHz, one channel, 16 bit
 * signed; the adapter reads the real rate of its line and resamples.
 *
 * <pre>{@code
 * source.open();
 * AudioSource.Read read = source.read();       // waits for the next block
 * if (read instanceof AudioSource.Block b) hear(b.samples());
 * }</pre>
 *
 * Used from one thread, except {@link #close}, which any thread may call and which ends a waiting
 * {@link #read} with {@link Ended}.
 */
public interface AudioSource extends AutoCloseable {

  /** Samples a second that every source delivers. */
  int RATE = 16_000;

  /**
   * Opens the line or file.
   *
   * @throws AudioException with one sentence for the user where it cannot be opened
   */
  void open();

  /** Waits for the next block, of 20 to 200 ms. */
  Read read();

  /** A name for the screen, such as the line's or the file's. */
  String name();

  @Override
  void close();

  /** What a read gives. */
  sealed interface Read {}

  /**
   * Sound.
   *
   * @param samples at {@link #RATE}, one channel
   */
  record Block(short[] samples) implements Read {}

  /** The source has no more, as a file at its end or a line that was closed. */
  record Ended() implements Read {}

  /**
   * The line is gone.
   *
   * @param sentence what is wrong and what to do next
   */
  record Lost(String sentence) implements Read {}

  /** The line or file cannot be opened; the message is one sentence for the user. */
  final class AudioException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with one sentence: what is wrong and what to do next. */
    public AudioException(String sentence, Throwable cause) {
      super(sentence, cause);
    }
  }
}
