package org.calamus.benchmark;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.calamus.port.AudioSource;

/**
 * The sound in a room while somebody says one utterance after the other: first two seconds of the
 * room alone, so that the ears can learn its noise, then each utterance with half a second of the
 * room before it and a second behind it.
 *
 * <p>The noise goes on at one level all the time. It lies below the mean level of the speaker's
 * utterances by the decibels asked for, and each utterance is brought to that mean level, so that
 * the distance holds for each. Without noise the utterances keep their own levels.
 */
final class Scene {

  /** Of the room alone before everything else, in samples. */
  static final int LEAD = 2 * AudioSource.RATE;

  /** Of the room before an utterance, in samples. */
  static final int BEFORE = AudioSource.RATE / 2;

  /** Of the room behind an utterance, in samples. */
  static final int BEHIND = AudioSource.RATE;

  private final List<Path> recordings;
  private final Condition condition;
  private final Optional<Noise> noise;
  private final double level;
  private int next = -1;

  /**
   * A scene.
   *
   * @param recordings of what is said, in this order
   * @param condition how it reaches the microphone
   * @param noise of power 1; used where the condition has noise
   */
  Scene(List<Path> recordings, Condition condition, Optional<Noise> noise) {
    this.recordings = List.copyOf(recordings);
    this.condition = condition;
    this.noise = condition.noise().flatMap(kind -> noise);
    this.level = this.noise.isPresent() ? meanPower(recordings) : 0;
  }

  private static double meanPower(List<Path> recordings) {
    return recordings.stream()
        .mapToDouble(r -> SpeechLevel.power(Recordings.read(r)))
        .filter(p -> p > 0)
        .average()
        .orElse(1);
  }

  /** The next piece: at first the room alone, then an utterance each time. */
  short[] next() {
    int index = next++;
    double[] speech = index < 0 ? new double[0] : Recordings.read(recordings.get(index));
    if (noise.isPresent()) {
      double own = SpeechLevel.power(speech);
      scale(speech, own > 0 ? Math.sqrt(level / own) : 1);
    }
    int before = index < 0 ? LEAD : BEFORE;
    int behind = index < 0 ? 0 : BEHIND;
    double[] all = Arrays.copyOf(new double[before], before + speech.length + behind);
    System.arraycopy(speech, 0, all, before, speech.length);
    noise.ifPresent(n -> add(all, n));
    return clipped(all);
  }

  private void add(double[] sound, Noise noise) {
    double amplitude = Math.sqrt(level) * Math.pow(10, -condition.decibels() / 20);
    for (int i = 0; i < sound.length; i++) {
      sound[i] += amplitude * noise.next();
    }
  }

  private short[] clipped(double[] sound) {
    short[] out = new short[sound.length];
    for (int i = 0; i < sound.length; i++) {
      long step = Math.round(sound[i] * condition.gain());
      out[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, step));
    }
    return out;
  }

  private static void scale(double[] sound, double factor) {
    for (int i = 0; i < sound.length; i++) {
      sound[i] *= factor;
    }
  }
}
