package org.calamus.port;

import org.calamus.core.dialogue.View;

/**
 * Shows the console and reads its keys. Posts {@code KeyStruck}, and {@code Stopping} when the
 * terminal goes away. {@link #show} returns at once; a newer view replaces one not yet drawn.
 */
public interface Screen extends AutoCloseable {
  /**
   * Takes over the terminal.
   *
   * @throws ScreenException with one sentence for the user where there is none to take over
   */
  void start(EventSink sink);

  /** Draws a view. */
  void show(View view);

  /** Gives the terminal back as it was. */
  @Override
  void close();

  /** There is no terminal to draw on; the message is one sentence for the user. */
  final class ScreenException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Made with one sentence: what is wrong and what to do next. */
    public ScreenException(String sentence, Throwable cause) {
      super(sentence, cause);
    }

    /** Made with one sentence where no other exception lies behind it. */
    public ScreenException(String sentence) {
      super(sentence);
    }
  }
}
