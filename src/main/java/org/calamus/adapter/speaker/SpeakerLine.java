package org.calamus.adapter.speaker;

import java.time.Duration;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/**
 * The speaker, through Java Sound; kept open between phrases, since opening takes longer than
 * speaking a word. Never waits: a line whose sound server died would never return. Used from one
 * thread.
 */
final class SpeakerLine {

  /** Samples written at a time: 20 ms. */
  static final int CHUNK = KevinSynthesizer.RATE / 50;

  /** 120 ms: what is in it when a phrase is cut off is thrown away. */
  private static final int BUFFER_BYTES = 2 * 6 * CHUNK;

  private static final AudioFormat FORMAT =
      new AudioFormat(KevinSynthesizer.RATE, 16, 1, true, false);

  private Optional<SourceDataLine> line = Optional.empty();

  /** Opens the line where it is not open; false where there is no speaker. */
  boolean opens() {
    if (line.isPresent()) {
      return true;
    }
    try {
      SourceDataLine opened = AudioSystem.getSourceDataLine(FORMAT);
      opened.open(FORMAT, BUFFER_BYTES);
      opened.start();
      line = Optional.of(opened);
      return true;
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
      // Java Sound throws the unchecked one where there is no sound card at all
      return false;
    }
  }

  /** Whether it is open. */
  boolean isOpen() {
    return line.isPresent();
  }

  /** Whether a chunk can be written now. */
  boolean hasRoom() {
    return line.isPresent() && line.get().available() >= 2 * CHUNK;
  }

  /** Writes a chunk; false where the line does not take it, as one that is lost does. */
  boolean write(short[] chunk) {
    byte[] bytes = new byte[2 * chunk.length];
    for (int i = 0; i < chunk.length; i++) {
      bytes[2 * i] = (byte) chunk[i];
      bytes[2 * i + 1] = (byte) (chunk[i] >> 8);
    }
    return line.isPresent() && line.get().write(bytes, 0, bytes.length) == bytes.length;
  }

  /** How much of what was written is still to be heard, at most. */
  Duration queued() {
    int bytes = line.map(it -> it.getBufferSize() - it.available()).orElse(0);
    return Duration.ofMillis(Math.max(0, bytes) * 1000L / (2L * KevinSynthesizer.RATE));
  }

  /** Throws away what was written and not yet heard. */
  void flush() {
    line.ifPresent(
        it -> {
          it.stop();
          it.flush();
          it.start();
        });
  }

  /** Closes it; it may be opened again. */
  void close() {
    line.ifPresent(
        it -> {
          it.stop();
          it.close();
        });
    line = Optional.empty();
  }
}
