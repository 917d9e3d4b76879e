package org.calamus.adapter.vosk;

import java.util.Arrays;

/** The last half second of sound, fed first when speech begins, so that its onset is not lost. */
final class RecentSound {

  private final short[] ring;
  private int next;
  private int count;

  /** Keeps so many samples. */
  RecentSound(int capacity) {
    ring = new short[capacity];
  }

  /** Adds sound; the oldest goes. */
  void add(short[] samples) {
    for (short sample : samples) {
      ring[next] = sample;
      next = (next + 1) % ring.length;
    }
    count = Math.min(ring.length, count + samples.length);
  }

  /** What is kept, oldest first. */
  short[] samples() {
    short[] out = new short[count];
    for (int i = 0; i < count; i++) {
      out[i] = ring[Math.floorMod(next - count + i, ring.length)];
    }
    return out;
  }

  /** Forgets all but the newest. */
  void keepNewest(int samples) {
    count = Math.max(0, Math.min(count, samples));
  }

  /** Forgets everything. */
  void clear() {
    count = 0;
    Arrays.fill(ring, (short) 0);
  }
}
