package org.calamus.adapter.vosk;

import org.calamus.port.AudioSource;

/**
 * Notices a microphone that delivers nothing but silence, as one that is muted or not plugged in
 * does. A live one always has some noise; but some headsets send zeros between words, so that after
 * the first sound it takes much longer to be sure.
 */
final class SilenceWatch {

  /** What changed with a block. */
  enum Change {
    /** Nothing. */
    NONE,
    /** It has been silent for too long. */
    FELL_SILENT,
    /** Sound came after that. */
    CAME_BACK
  }

  /** The largest amplitude that still counts as silence, in units of 16 bit: -80 dB. */
  private static final int SILENT_PEAK = 3;

  private static final long AT_START = 3L * AudioSource.RATE;
  private static final long LATER = 30L * AudioSource.RATE;

  private long silentSamples;
  private boolean hasHeardSound;
  private boolean isSilent;

  /** Takes the length and the peak of the next block. */
  Change hear(int samples, int peak) {
    if (peak > SILENT_PEAK) {
      boolean wasSilent = isSilent;
      silentSamples = 0;
      hasHeardSound = true;
      isSilent = false;
      return wasSilent ? Change.CAME_BACK : Change.NONE;
    }
    silentSamples += samples;
    if (!isSilent && silentSamples >= (hasHeardSound ? LATER : AT_START)) {
      isSilent = true;
      return Change.FELL_SILENT;
    }
    return Change.NONE;
  }

  /** The source was opened again. */
  void restart() {
    silentSamples = 0;
    hasHeardSound = false;
    isSilent = false;
  }
}
