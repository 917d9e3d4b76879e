package org.calamus.adapter.vosk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URL;
import java.util.Arrays;
import java.util.Random;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.calamus.support.Wind;

/** Sound for tests: recordings of 16 kHz, room noise, and what is made of them. */
final class Sounds {

  private Sounds() {}

  /** A recording among the test resources. */
  static short[] recording(String name) {
    URL url = Sounds.class.getResource("/ears/" + name + ".wav");
    try (AudioInputStream in = AudioSystem.getAudioInputStream(url)) {
      byte[] bytes = in.readAllBytes();
      short[] samples = new short[bytes.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = (short) ((bytes[2 * i] & 0xff) | bytes[2 * i + 1] << 8);
      }
      return samples;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (UnsupportedAudioFileException e) {
      throw new AssertionError(e);
    }
  }

  /** A quiet room: white noise at about -66 dB. */
  static short[] room(int millis) {
    return noise(millis, 16);
  }

  /** White noise of a root mean square in units of 16 bit; the same each time. */
  static short[] noise(int millis, double rms) {
    Random random = new Random(11);
    short[] out = new short[16 * millis];
    for (int i = 0; i < out.length; i++) {
      out[i] = (short) Math.round(rms * random.nextGaussian());
    }
    return out;
  }

  /** A gust of wind in the microphone: noise below some 200 Hz that swells and dies away. */
  static short[] gust(int millis, int seed) {
    Wind wind = new Wind(new Random(seed));
    short[] out = new short[16 * millis];
    for (int i = 0; i < out.length; i++) {
      double swell = Math.sin(Math.PI * i / out.length);
      out[i] = clipped((long) (72_000 * swell * swell * wind.next()));
    }
    return out;
  }

  /** Both at once; as long as the first. */
  static short[] mixed(short[] one, short[] other) {
    short[] out = new short[one.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = clipped(one[i] + other[i]);
    }
    return out;
  }

  /** Louder or softer. */
  static short[] scaled(short[] samples, double factor) {
    short[] out = new short[samples.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = clipped(Math.round(samples[i] * factor));
    }
    return out;
  }

  private static short clipped(long value) {
    return (short) Math.max(-32_768, Math.min(32_767, value));
  }

  /** A recording without the silence around it, so that pauses are as long as the test says. */
  static short[] trimmed(String name) {
    short[] all = recording(name);
    int from = 0;
    int to = all.length;
    while (Math.abs((int) all[from]) < 300) {
      from++;
    }
    while (Math.abs((int) all[to - 1]) < 300) {
      to--;
    }
    return Arrays.copyOfRange(all, from, to);
  }

  /** One after another. */
  static short[] join(short[]... parts) {
    short[] out = new short[0];
    for (short[] part : parts) {
      int at = out.length;
      out = Arrays.copyOf(out, at + part.length);
      System.arraycopy(part, 0, out, at, part.length);
    }
    return out;
  }
}
