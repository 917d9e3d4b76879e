package org.calamus.adapter.microphone;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.calamus.core.hearing.Hum;
import org.calamus.core.hearing.Levels;
import org.calamus.port.AudioSource;

/** Another source, measured on its way: first the place, then, from a call on, speech. */
public final class MeteredSource implements AudioSource {

  private static final double FULL_SCALE = 32_768;

  /** Parts softer than this below the loudest are pauses. */
  private static final double PAUSE = Math.pow(10, -1.5);

  /** So much of the place is looked at for a hum, its latest. */
  private static final int LONGEST_PLACE = 4 * RATE;

  private final AudioSource inner;
  private final List<double[]> place = new ArrayList<>();
  private final List<double[]> speech = new ArrayList<>();
  private List<double[]> measured = place;
  private short[] placeSound = new short[0];

  /** Measures a source; closed with it. */
  public MeteredSource(AudioSource inner) {
    this.inner = inner;
  }

  /** From now on somebody speaks. */
  public synchronized void speechBegins() {
    measured = speech;
  }

  /** What was measured so far. */
  public synchronized Levels levels() {
    List<double[]> quiet = place.stream().sorted((a, b) -> Double.compare(a[0], b[0])).toList();
    double noise = mean(quiet.subList(0, (quiet.size() * 9 + 9) / 10), 0);
    double loudest = speech.stream().mapToDouble(b -> b[0]).max().orElse(0);
    List<double[]> loud = speech.stream().filter(b -> b[0] >= loudest * PAUSE).toList();
    return new Levels(
        decibels(noise),
        decibels(mean(loud, 0)),
        (int) Math.round(1000 * mean(loud, 1)),
        Hum.in(placeSound, RATE));
  }

  private static double mean(List<double[]> blocks, int which) {
    return blocks.stream().mapToDouble(b -> b[which]).average().orElse(0);
  }

  private static int decibels(double power) {
    return (int) Math.round(Math.max(-96, 10 * Math.log10(power / FULL_SCALE / FULL_SCALE)));
  }

  @Override
  public void open() {
    inner.open();
  }

  @Override
  public Read read() {
    Read read = inner.read();
    if (read instanceof Block block && block.samples().length > 0) {
      measure(block.samples());
    }
    return read;
  }

  private synchronized void measure(short[] samples) {
    double squares = 0;
    double full = 0;
    for (short sample : samples) {
      squares += (double) sample * sample;
      full += Math.abs((int) sample) >= Short.MAX_VALUE - 1 ? 1 : 0;
    }
    measured.add(new double[] {squares / samples.length, full / samples.length});
    if (measured == place) {
      keep(samples);
    }
  }

  private void keep(short[] samples) {
    int length = placeSound.length;
    short[] longer = Arrays.copyOf(placeSound, length + samples.length);
    System.arraycopy(samples, 0, longer, length, samples.length);
    placeSound =
        Arrays.copyOfRange(longer, Math.max(0, longer.length - LONGEST_PLACE), longer.length);
  }

  @Override
  public String name() {
    return inner.name();
  }

  @Override
  public void close() {
    inner.close();
  }
}
