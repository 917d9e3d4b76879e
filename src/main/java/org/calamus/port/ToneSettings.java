package org.calamus.port;

/**
 * Whether and how loud the short tones sound.
 *
 * @param isOn whether they sound
 * @param percent of their full loudness, which is a tenth of that of speech; 1 to 100
 */
public record ToneSettings(boolean isOn, int percent) {

  private static final ToneSettings USUAL = new ToneSettings(true, 100);

  /** Checks the range. */
  public ToneSettings {
    if (percent < 1 || percent > 100) {
      throw new IllegalArgumentException("1 to 100 percent: " + percent);
    }
  }

  /** What holds where the station says nothing. */
  public static ToneSettings usual() {
    return USUAL;
  }

  /** The same, silent. */
  public ToneSettings off() {
    return new ToneSettings(false, percent);
  }
}
