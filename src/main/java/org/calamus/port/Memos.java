package org.calamus.port;

/**
 * Keeps spoken notes as sound files beside the records.
 *
 * <pre>{@code
 * Memos.Place place = memos.named("12-1.wav");   // nothing is written yet
 * try (Memos.Recording recording = place.begin()) {
 *   recording.add(samples);
 *   String name = recording.keep();              // only now it has its name, safe on disk
 * }
 * }</pre>
 *
 * {@link #named} is called on the engine's thread and returns at once; the rest belongs to the
 * thread that hears.
 */
public interface Memos {

  /**
   * The place for a memo.
   *
   * @param fileName a plain file name that ends in {@code .wav}: letters, digits, hyphens
   * @throws IllegalArgumentException for any other name
   */
  Place named(String fileName);

  /** Where a memo is to go. */
  @FunctionalInterface
  interface Place {
    /**
     * Begins the memo.
     *
     * @throws MemoException where nothing can be written
     */
    Recording begin();
  }

  /** A memo that is being written. Never under its own name before it is whole. */
  interface Recording extends AutoCloseable {
    /**
     * Adds sound.
     *
     * @param samples at {@link AudioSource#RATE}, one channel
     * @throws MemoException where it cannot be written, as on a full disk
     */
    void add(short[] samples);

    /**
     * Ends the memo and gives it its name, durably.
     *
     * @return the name: the one asked for, or one like it where a memo had that name already
     * @throws MemoException where that fails; the memo is lost then
     */
    String keep();

    /** Removes what was not kept. */
    @Override
    void close();
  }

  /** A memo could not be written; the message is one sentence for the user. */
  final class MemoException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with one sentence: what is wrong and what to do next. */
    public MemoException(String sentence, Throwable cause) {
      super(sentence, cause);
    }
  }
}
