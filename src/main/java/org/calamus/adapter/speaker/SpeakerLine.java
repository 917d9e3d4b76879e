package org.calamus.adapter.speaker;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/**
 * The speaker, through Java Sound. Opened for each phrase anew, which takes 5 to 20 ms: a line that
 * was stopped, flushed and started again was seen to swallow parts of the next phrase behind a
 * sound server. Never waits: a line whose server died would never return. Used from one thread.
 */
final class SpeakerLine {

  /** Samples written at a time: 20 ms. */
  static final int CHUNK = KevinSynthesizer.RATE / 50;

  /**
   * 2 s. A sound server that takes more at a time than is there plays silence for the rest, and
   * then skips as much of the phrase; with 0.3 s that was seen often. What is in it when a phrase
   * is cut off is thrown away.
   */
  private static final int BUFFER_BYTES = 2 * 2 * KevinSynthesizer.RATE;

  private static final int FILLED_SAMPLES = 10 * CHUNK;
  private static final int PAD_SAMPLES = KevinSynthesizer.RATE;

  private static final AudioFormat FORMAT =
      new AudioFormat(KevinSynthesizer.RATE, 16, 1, true, false);

  private Optional<SourceDataLine> line = Optional.empty();
  private long heardByNanos;
  private boolean isStarted;
  private long writtenSamples;
  private long soundSamples;

  /** Opens the line where it is not open; false where there is no speaker. */
  boolean opens() {
    if (line.isPresent()) {
      return true;
    }
    try {
      SourceDataLine opened = AudioSystem.getSourceDataLine(FORMAT);
      opened.open(FORMAT, BUFFER_BYTES);
      heardByNanos = System.nanoTime();
      isStarted = false;
      writtenSamples = 0;
      soundSamples = 0;
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

  /** Writes a chunk of sound; false where the line does not take it, as one that is lost does. */
  boolean write(short[] chunk) {
    long chunkNanos = TimeUnit.SECONDS.toNanos(chunk.length) / KevinSynthesizer.RATE;
    heardByNanos = Math.max(heardByNanos, System.nanoTime()) + chunkNanos;
    boolean isTaken = put(chunk);
    soundSamples = writtenSamples;
    return isTaken;
  }

  /** Writes silence behind the sound: some lines only begin to play once their buffer is full. */
  void pad() {
    while (hasRoom() && writtenSamples - soundSamples < PAD_SAMPLES) {
      put(new short[CHUNK]);
    }
  }

  /**
   * How long the sound written will still be heard, at most; zero or less where it is over. The
   * line's own word is not enough: a sound server takes sound before it plays it.
   */
  Duration left() {
    long queuedBytes = line.map(it -> it.getBufferSize() - it.available()).orElse(0);
    long samples = soundSamples - (writtenSamples - queuedBytes / 2);
    long nanos = TimeUnit.SECONDS.toNanos(samples) / KevinSynthesizer.RATE;
    return Duration.ofNanos(Math.max(nanos, heardByNanos - System.nanoTime()));
  }

  /** A line that is started empty loses what is written while it finds that out. */
  private void startWhenFilled() {
    if (!isStarted && writtenSamples >= FILLED_SAMPLES) {
      isStarted = true;
      line.ifPresent(SourceDataLine::start);
    }
  }

  private boolean put(short[] chunk) {
    byte[] bytes = new byte[2 * chunk.length];
    for (int i = 0; i < chunk.length; i++) {
      bytes[2 * i] = (byte) chunk[i];
      bytes[2 * i + 1] = (byte) (chunk[i] >> 8);
    }
    boolean isTaken = line.isPresent() && line.get().write(bytes, 0, bytes.length) == bytes.length;
    writtenSamples += chunk.length;
    startWhenFilled();
    return isTaken;
  }

  /** Closes it, and throws away what was written and not yet heard; it may be opened again. */
  void close() {
    line.ifPresent(
        it -> {
          it.stop();
          it.close();
        });
    line = Optional.empty();
  }
}
