package org.calamus.adapter.vosk;

import java.util.Random;

/**
 * A hiss of about one step of 16 bits, the same for every utterance.
 *
 * <p>The recogniser's tables have never seen digital silence, such as a muted line or a recording
 * gives. Its own remedy is noise that is drawn anew in each run, so that the same recording would
 * be heard now in this way and now in that; with this one it is heard the same every time.
 */
final class Hiss {

  private static final long SEED = 20_011;

  private Random random = new Random(SEED);

  /** Begins anew, as for the next utterance. */
  void restart() {
    random = new Random(SEED);
  }

  /** The sound with the hiss over it. */
  short[] over(short[] sound) {
    short[] out = new short[sound.length];
    for (int i = 0; i < sound.length; i++) {
      long sum = sound[i] + Math.round(random.nextGaussian());
      out[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sum));
    }
    return out;
  }
}
