package org.calamus.benchmark;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.calamus.port.AudioSource;
import org.calamus.support.Wind;

/**
 * Sounds of a banding hut that are no speech, made by rule: a bird that calls, gusts of wind in the
 * microphone, a door that slams, somebody who knocks. Each is named {@code kind-number}; the number
 * is the seed, other ones in each half.
 */
final class Sounds implements Speaker.Mouth {

  private static final List<String> KINDS = List.of("bird", "wind", "door", "knock");
  private static final int SECONDS = 6;
  private static final double LOUD = 9_000;

  /** The kinds of sound. */
  static List<String> kinds() {
    return KINDS;
  }

  /** The names of sounds of a kind for both halves: every second one belongs to each. */
  static List<String> of(String kind, int each) {
    List<String> names = new ArrayList<>();
    for (int i = 0; i < 2 * each; i++) {
      names.add(kind + "-" + i);
    }
    return names;
  }

  @Override
  public boolean canSay(Said said) {
    return said.isChatter() && KINDS.contains(said.set());
  }

  @Override
  public void say(Said said, Path wav) throws IOException {
    String[] parts = said.spoken().split("-");
    double[] sound = new double[SECONDS * AudioSource.RATE];
    Random random = new Random(said.spoken().hashCode());
    switch (parts[0]) {
      case "bird" -> bird(sound, random);
      case "wind" -> wind(sound, random);
      case "door" -> door(sound, random);
      default -> knock(sound, random);
    }
    write(sound, wav);
  }

  /** Notes that rise or fall between 2.5 and 6.5 kHz, in phrases. */
  private static void bird(double[] sound, Random random) {
    int at = 0;
    while (at < sound.length) {
      int notes = 2 + random.nextInt(6);
      double from = 2_500 + 3_000 * random.nextDouble();
      double to = from + 2_000 * (random.nextDouble() - 0.5);
      int length = (int) (AudioSource.RATE * (0.04 + 0.1 * random.nextDouble()));
      for (int i = 0; i < notes; i++) {
        chirp(sound, at, length, from, to);
        at += length + length / 2;
      }
      at += (int) (AudioSource.RATE * (0.3 + random.nextDouble()));
    }
  }

  private static void chirp(double[] sound, int at, int length, double from, double to) {
    double phase = 0;
    for (int i = 0; i < length && at + i < sound.length; i++) {
      double part = (double) i / length;
      phase += 2 * Math.PI * (from + (to - from) * part) / AudioSource.RATE;
      sound[at + i] += LOUD * Math.sin(Math.PI * part) * Math.sin(phase);
    }
  }

  /** Noise below some 200 Hz that swells and dies away every second or two. */
  private static void wind(double[] sound, Random random) {
    Wind wind = new Wind(random);
    double pace = 0.4 + 0.4 * random.nextDouble();
    for (int i = 0; i < sound.length; i++) {
      double swell = Math.max(0, Math.sin(2 * Math.PI * pace * i / AudioSource.RATE));
      sound[i] = 8 * LOUD * swell * swell * wind.next();
    }
  }

  /** A thud of wood and a rattle after it. */
  private static void door(double[] sound, Random random) {
    for (int at = AudioSource.RATE / 2; at < sound.length; at += 2 * AudioSource.RATE) {
      thud(sound, at, 70 + 40 * random.nextDouble(), 0.12, 2, random);
      for (int i = 1; i < 5; i++) {
        int later = at + (int) (AudioSource.RATE * (0.08 * i + 0.02 * random.nextDouble()));
        thud(sound, later, 300 + 500 * random.nextDouble(), 0.02, 0.5 / i, random);
      }
    }
  }

  /** Two to four raps on wood, again and again. */
  private static void knock(double[] sound, Random random) {
    for (int at = AudioSource.RATE / 2; at < sound.length; at += 3 * AudioSource.RATE / 2) {
      int raps = 2 + random.nextInt(3);
      for (int i = 0; i < raps; i++) {
        int later = at + (int) (AudioSource.RATE * 0.18 * i);
        thud(sound, later, 180 + 120 * random.nextDouble(), 0.03, 1.2, random);
      }
    }
  }

  private static void thud(
      double[] sound, int at, double hertz, double decay, double loud, Random random) {
    int length = (int) (6 * decay * AudioSource.RATE);
    for (int i = 0; i < length && at + i < sound.length; i++) {
      double seconds = (double) i / AudioSource.RATE;
      double tone = Math.sin(2 * Math.PI * hertz * seconds) + 0.4 * random.nextGaussian();
      sound[at + i] += loud * LOUD * Math.exp(-seconds / decay) * tone;
    }
  }

  private static void write(double[] sound, Path wav) throws IOException {
    byte[] bytes = new byte[2 * sound.length];
    for (int i = 0; i < sound.length; i++) {
      int step = (int) Math.max(-32_000, Math.min(32_000, Math.round(sound[i])));
      bytes[2 * i] = (byte) step;
      bytes[2 * i + 1] = (byte) (step >> 8);
    }
    AudioFormat format = new AudioFormat(AudioSource.RATE, 16, 1, true, false);
    AudioInputStream stream =
        new AudioInputStream(new ByteArrayInputStream(bytes), format, sound.length);
    AudioSystem.write(stream, AudioFileFormat.Type.WAVE, wav.toFile());
  }
}
