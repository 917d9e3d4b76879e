package org.calamus.port;

import org.calamus.core.dialogue.View;

/**
 * Shows the console and reads its keys. Posts {@code KeyStruck}, and {@code Stopping} when the
 * terminal goes away. {@link #show} returns at once; a newer view replaces one not yet drawn.
 */
public interface Screen extends AutoCloseable {
  /** Takes over the terminal. */
  void start(EventSink sink);

  /** Draws a view. */
  void show(View view);

  /** Gives the terminal back as it was. */
  @Override
  void close();
}
