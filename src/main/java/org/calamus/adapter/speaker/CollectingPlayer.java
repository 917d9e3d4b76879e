package org.calamus.adapter.speaker;

import com.sun.speech.freetts.audio.AudioPlayer;
import java.io.ByteArrayOutputStream;
import javax.sound.sampled.AudioFormat;

/** Takes the voice's sound into memory; the library's own players write files or print. */
final class CollectingPlayer implements AudioPlayer {

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private AudioFormat format = new AudioFormat(KevinSynthesizer.RATE, 16, 1, true, true);
  private float volume = 1;

  /** Forgets what was collected. */
  synchronized void clear() {
    bytes.reset();
  }

  /** What was collected. */
  synchronized short[] samples() {
    byte[] all = bytes.toByteArray();
    short[] out = new short[all.length / 2];
    int high = format.isBigEndian() ? 0 : 1;
    for (int i = 0; i < out.length; i++) {
      out[i] = (short) (all[2 * i + high] << 8 | (all[2 * i + 1 - high] & 0xff));
    }
    return out;
  }

  @Override
  public synchronized boolean write(byte[] audio) {
    return write(audio, 0, audio.length);
  }

  @Override
  public synchronized boolean write(byte[] audio, int offset, int length) {
    bytes.write(audio, offset, length);
    return true;
  }

  @Override
  public synchronized void setAudioFormat(AudioFormat format) {
    this.format = format;
  }

  @Override
  public synchronized AudioFormat getAudioFormat() {
    return format;
  }

  @Override
  public synchronized float getVolume() {
    return volume;
  }

  @Override
  public synchronized void setVolume(float volume) {
    this.volume = volume;
  }

  @Override
  public boolean drain() {
    return true;
  }

  @Override
  public boolean end() {
    return true;
  }

  @Override
  public long getTime() {
    return -1;
  }

  // the rest is about a device; there is none

  @Override
  public void begin(int size) {}

  @Override
  public void pause() {}

  @Override
  public void resume() {}

  @Override
  public void reset() {}

  @Override
  public void cancel() {}

  @Override
  public void close() {}

  @Override
  public void resetTime() {}

  @Override
  public void startFirstSampleTimer() {}

  @Override
  public void showMetrics() {}
}
