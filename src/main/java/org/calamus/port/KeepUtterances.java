package org.calamus.port;

/**
 * Whether a station keeps what is said, and how much of it.
 *
 * @param isOn whether utterances are kept
 * @param mostMegabytes how much of them is kept in all, in megabytes of a million bytes, at least 1
 */
public record KeepUtterances(boolean isOn, int mostMegabytes) {

  /** Half a gigabyte is four hours of nothing but speech, the words of thousands of birds. */
  private static final KeepUtterances USUAL = new KeepUtterances(false, 500);

  /** Checks the range. */
  public KeepUtterances {
    if (mostMegabytes < 1) {
      throw new IllegalArgumentException("no room: " + mostMegabytes);
    }
  }

  /** What holds where the station says nothing: nothing is kept. */
  public static KeepUtterances usual() {
    return USUAL;
  }
}
