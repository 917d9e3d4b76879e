package org.calamus.core.dialogue;

/** The three short tones. */
public enum Tone {
  /** A value was taken. */
  TAKEN,
  /** Something was said and not understood. */
  NOT_UNDERSTOOD,
  /** Look at the screen. */
  LOOK_HERE
}
