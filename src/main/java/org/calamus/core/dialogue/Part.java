package org.calamus.core.dialogue;

/** The parts of the console whose health is shown. */
public enum Part {
  /** The microphone and the recogniser behind it. */
  EARS("ears"),
  /** The spoken readback. */
  VOICE("voice"),
  /** The instruments on serial ports. */
  SCALE("scale"),
  /** The database. */
  STORE("store"),
  /** What keeps the sound of utterances; only spoken of where a station wants them kept. */
  KEEPER("kept");

  private final String word;

  Part(String word) {
    this.word = word;
  }

  /** The word shown. */
  public String word() {
    return word;
  }
}
