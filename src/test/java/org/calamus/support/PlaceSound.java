package org.calamus.support;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/**
 * The sound of a place, made at test time: silence and recordings one after the other, louder or
 * softer, with noise and a hum over all of it. 16 kHz, one channel, 16 bit.
 */
public final class PlaceSound {

  private static final int RATE = 16_000;

  private final double gain;
  private double[] samples = new double[0];

  /**
   * A place without sound.
   *
   * @param gain by how much the recordings are louder than they were made
   */
  public PlaceSound(double gain) {
    this.gain = gain;
  }

  /** Nobody speaks for so long. */
  public PlaceSound pause(int millis) {
    samples = Arrays.copyOf(samples, samples.length + millis * (RATE / 1000));
    return this;
  }

  /** A recording is spoken. */
  public PlaceSound speak(Path wav) throws IOException {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
      byte[] bytes = in.readAllBytes();
      int at = samples.length;
      samples = Arrays.copyOf(samples, at + bytes.length / 2);
      for (int i = 0; i < bytes.length / 2; i++) {
        samples[at + i] = gain * (short) ((bytes[2 * i] & 0xff) | bytes[2 * i + 1] << 8);
      }
      return this;
    } catch (UnsupportedAudioFileException e) {
      throw new AssertionError(e);
    }
  }

  /** White noise over all of it, of a root mean square in units of 16 bit; the same each time. */
  public PlaceSound noise(double rms) {
    Random random = new Random(11);
    for (int i = 0; i < samples.length; i++) {
      samples[i] += rms * random.nextGaussian();
    }
    return this;
  }

  /** A hum with every second multiple over all of it, each softer than the one before. */
  public PlaceSound hum(int hertz, double rms) {
    for (int multiple = 1; multiple <= 5; multiple += 2) {
      for (int i = 0; i < samples.length; i++) {
        double angle = 2 * Math.PI * hertz * multiple * i / RATE;
        samples[i] += Math.sqrt(2) * rms / multiple * Math.sin(angle);
      }
    }
    return this;
  }

  /** Writes it as a WAV file; what is too loud is cut off, as a sound card does. */
  public Path write(Path wav) throws IOException {
    byte[] bytes = new byte[2 * samples.length];
    for (int i = 0; i < samples.length; i++) {
      long cut = Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(samples[i])));
      bytes[2 * i] = (byte) cut;
      bytes[2 * i + 1] = (byte) (cut >> 8);
    }
    AudioSystem.write(
        new AudioInputStream(
            new ByteArrayInputStream(bytes),
            new AudioFormat(RATE, 16, 1, true, false),
            samples.length),
        AudioFileFormat.Type.WAVE,
        wav.toFile());
    return wav;
  }
}
