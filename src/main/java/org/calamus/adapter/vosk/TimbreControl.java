package org.calamus.adapter.vosk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.calamus.core.hearing.Timbre;

/**
 * Learns the timbre of a voice through its microphone, and how to bring it to the one that the
 * recogniser expects. Each utterance begins with the mean of many voices in the recogniser's ears,
 * which learn that of this one only within seconds: longer than most answers take.
 *
 * <p>The timbre is the mean of the features of speech, which is taken out as in B. Atal,
 * Effectiveness of linear prediction characteristics of the speech wave for automatic speaker
 * identification and verification, Journal of the Acoustical Society of America 55 (6), 1974. Only
 * speech counts: with the pauses in the mean the recogniser heard worse than without all this. The
 * numbers were chosen on the tuning half (docs/benchmarks.md). Not thread-safe.
 */
final class TimbreControl {

  /**
   * The first coefficient of a frame that is no pause, at the level that {@link LevelControl}
   * gives.
   */
  private static final double SPEECH = 76;

  /** How many frames the timbre of many voices counts for. */
  private static final double EXPECTED_FRAMES = 200;

  /** So many frames are remembered; what was before counts less and less. */
  private static final int MOST_FRAMES = 3_000;

  /** What was learnt another day counts for no more: the microphone may sit elsewhere today. */
  private static final int MOST_RECALLED_FRAMES = 1_000;

  /** No frequency is changed by more than 12 dB. */
  private static final double MOST = Decibels.factor(12);

  private final MelCepstra cepstra = new MelCepstra();
  private final double[] expected;
  private final double[] means;
  private int frames;

  /**
   * Knows no voice yet.
   *
   * @param expected the mean of the features that the recogniser expects
   */
  TimbreControl(double[] expected) {
    this.expected = expected.clone();
    this.means = expected.clone();
  }

  /** Goes on from what was learnt before. */
  void recall(Timbre timbre) {
    for (int i = 1; i < means.length; i++) {
      means[i] = timbre.means().get(i - 1);
    }
    frames = Math.min(MOST_RECALLED_FRAMES, timbre.frames());
  }

  /** Learns from an utterance, as the recogniser got it. */
  void learn(short[] sound) {
    double[] change = MelCepstra.bounded(change(), MOST); // the sound has it already
    List<double[]> speech = cepstra.of(sound).stream().filter(f -> f[0] > SPEECH).toList();
    int all = frames + speech.size();
    for (int i = 1; i < means.length && all > 0; i++) {
      double sum = means[i] * frames;
      for (double[] frame : speech) {
        sum += frame[i] - change[i];
      }
      means[i] = sum / all;
    }
    frames = Math.min(MOST_FRAMES, all);
  }

  /** How the features should be changed, by as much of the way as the voice is known. */
  private double[] change() {
    double share = frames / (frames + EXPECTED_FRAMES);
    double[] change = new double[means.length];
    for (int i = 1; i < means.length; i++) {
      change[i] = share * (expected[i] - means[i]);
    }
    return change;
  }

  /** What it has learnt. */
  Timbre timbre() {
    List<Double> list = new ArrayList<>();
    Arrays.stream(means, 1, means.length).forEach(list::add);
    return new Timbre(list, frames);
  }

  /**
   * The factors for the amplitudes of a spectrum.
   *
   * @param bins how many frequencies it has, from 0 to half of the sampling rate
   */
  double[] factors(int bins) {
    double[] factors = MelCepstra.factors(change(), bins);
    return Arrays.stream(factors).map(f -> Math.max(1 / MOST, Math.min(MOST, f))).toArray();
  }
}
