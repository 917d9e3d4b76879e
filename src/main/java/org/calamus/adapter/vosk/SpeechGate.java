package org.calamus.adapter.vosk;

import java.util.Arrays;
import org.calamus.port.AudioSource;

/**
 * Tells speech from silence by its level alone, so that the recogniser is fed whole utterances and
 * no endless silence.
 *
 * <p>Sound is judged in frames of 10 ms, freed from rumble below about 150 Hz (wind, handling). The
 * noise floor is the quietest 50 ms of the last 5 seconds: between words even quick speech is
 * quieter than that, so that speech does not lift it, while a steady noise becomes the floor within
 * 5 seconds. A noise that comes and goes, such as people who talk in the room, has quiet moments as
 * well: so the floor is not below the median of the last 5 seconds in which nobody spoke. What goes
 * on for longer than 6 seconds is taken for such a noise, too. Speech begins when 5 of 8 frames
 * stand 10 dB above the floor; one clink of a tool does not. It ends when no 3 of 5 frames have
 * stood above it for the trailing silence. The numbers are from memory and were tried on synthetic
 * voices.
 *
 * <p>Pure: blocks in, decisions out; no clock and no thread.
 */
final class SpeechGate {

  /** What a block did to the gate. */
  enum Decision {
    /** No speech. */
    QUIET,
    /** Speech began in this block. */
    BEGINS,
    /** Speech goes on, or a pause shorter than the trailing silence. */
    GOES_ON,
    /** The trailing silence is complete. */
    ENDS
  }

  private static final int FRAME = AudioSource.RATE / 100;
  private static final int FRAMES_A_BUCKET = 5;
  private static final int BUCKETS = 100;
  private static final double FIRST_FLOOR = -55;
  private static final double LOWEST_FLOOR = -68;
  private static final int FRAMES_TO_OPEN = 5;
  private static final double OPENS_ABOVE_FLOOR = 10;
  private static final double STAYS_ABOVE_FLOOR = 7;

  /** Breath and echo lie this far below the loudest frame of the utterance. */
  private static final double STAYS_BELOW_LOUDEST = 35;

  /** One pole: passes what is faster than about 150 Hz at 16 kHz. */
  private static final double RUMBLE_POLE = 0.942;

  private final int usualTrailing;
  private int trailingFrames;

  /** A whole band number takes a slow speaker 5.5 seconds. */
  private static final int LONGEST_SPEECH_FRAMES = 600;

  private final double[] buckets = new double[BUCKETS];
  private final double[] room = new double[BUCKETS];
  private int roomBucket;

  /** Changes with the buckets alone: sorting a hundred levels for every frame would be waste. */
  private double floor;

  private int openFrames;
  private int bucket;
  private double bucketEnergy;
  private int bucketFrames;
  private double frameEnergy;
  private int frameSamples;
  private double lastIn;
  private double lastOut;
  private int history;
  private boolean isOpen;
  private double loudest;
  private int framesSinceVoiced;
  private int voicedFrames;
  private double voicedEnergy;

  /**
   * A gate over sound at {@link AudioSource#RATE}.
   *
   * @param trailingMillis how long it must be quiet for speech to have ended, in milliseconds
   */
  SpeechGate(int trailingMillis) {
    usualTrailing = trailingMillis / 10;
    trailingFrames = usualTrailing;
    Arrays.fill(buckets, FIRST_FLOOR);
    Arrays.fill(room, LOWEST_FLOOR);
    floor = measuredFloor();
  }

  /** Hears the next block. */
  Decision hear(short[] block) {
    boolean wasOpen = isOpen;
    boolean ended = false;
    for (short sample : block) {
      lastOut = sample - lastIn + RUMBLE_POLE * lastOut;
      lastIn = sample;
      frameEnergy += lastOut * lastOut;
      if (++frameSamples == FRAME) {
        ended |= frame(frameEnergy / FRAME);
        frameEnergy = 0;
        frameSamples = 0;
      }
    }
    if (ended) {
      isOpen = false;
      return Decision.ENDS;
    }
    if (!isOpen) {
      return Decision.QUIET;
    }
    return wasOpen ? Decision.GOES_ON : Decision.BEGINS;
  }

  /** Forgets the speech being heard, as after an utterance was ended; keeps the floor. */
  void restart() {
    isOpen = false;
    openFrames = 0;
    trailingFrames = usualTrailing;
    history = 0;
    voicedFrames = 0;
    voicedEnergy = 0;
    framesSinceVoiced = 0;
  }

  /**
   * Waits so long in the pause that has begun, in milliseconds; less than the usual is no pause.
   */
  void waitFor(int trailingMillis) {
    trailingFrames = Math.max(usualTrailing, trailingMillis / 10);
  }

  /** How long it has been quiet since the last speech, in samples. */
  int samplesSinceVoiced() {
    return framesSinceVoiced * FRAME + frameSamples;
  }

  /** How much of the utterance stood above the floor, in milliseconds. */
  int voicedMillis() {
    return voicedFrames * 10;
  }

  /** The mean level of what of the utterance stood above the floor, in decibels. */
  double speechLevel() {
    return Decibels.ofAmplitude(Math.sqrt(voicedEnergy / Math.max(1, voicedFrames)));
  }

  /** The noise floor, in decibels below full scale, at least the one that a quiet room has. */
  double floor() {
    return floor;
  }

  private double measuredFloor() {
    return Math.max(LOWEST_FLOOR, Math.max(quietest(), medianOfRoom()));
  }

  private double medianOfRoom() {
    double[] sorted = room.clone();
    Arrays.sort(sorted);
    return sorted[BUCKETS / 2];
  }

  private double quietest() {
    return Arrays.stream(buckets).min().orElse(FIRST_FLOOR);
  }

  private boolean frame(double energy) {
    learn(energy);
    double level = Decibels.ofAmplitude(Math.sqrt(energy));
    double threshold =
        isOpen
            ? Math.max(floor + STAYS_ABOVE_FLOOR, loudest - STAYS_BELOW_LOUDEST)
            : floor + OPENS_ABOVE_FLOOR;
    history = history << 1 | (level > threshold ? 1 : 0);
    if (!isOpen) {
      begin(level, energy);
      return false;
    }
    openFrames++;
    loudest = Math.max(loudest, level);
    if (Integer.bitCount(history & 0x1f) >= 3) {
      framesSinceVoiced = 0;
      voicedFrames++;
      voicedEnergy += energy;
    } else {
      framesSinceVoiced++;
    }
    return framesSinceVoiced >= trailingFrames;
  }

  private void begin(double level, double energy) {
    if (Integer.bitCount(history & 0xff) >= FRAMES_TO_OPEN) {
      isOpen = true;
      openFrames = 0;
      loudest = level;
      framesSinceVoiced = 0;
      voicedFrames = FRAMES_TO_OPEN;
      // the frames before it are not kept; they are about as loud
      voicedEnergy = energy * FRAMES_TO_OPEN;
    }
  }

  private void learn(double energy) {
    bucketEnergy += energy;
    if (++bucketFrames == FRAMES_A_BUCKET) {
      buckets[bucket] = Decibels.ofAmplitude(Math.sqrt(bucketEnergy / FRAMES_A_BUCKET));
      if (!isOpen || openFrames > LONGEST_SPEECH_FRAMES) {
        room[roomBucket] = buckets[bucket];
        roomBucket = (roomBucket + 1) % BUCKETS;
      }
      bucket = (bucket + 1) % BUCKETS;
      bucketEnergy = 0;
      bucketFrames = 0;
      floor = measuredFloor();
    }
  }
}
