package org.calamus.port;

/**
 * Whether a station keeps what is said, and how much of it; and whether it learns its voices.
 *
 * @param isOn whether utterances are kept
 * @param mostMegabytes how much of them is kept in all, in megabytes of a million bytes, at least 1
 * @param isVoiceForgotten whether nothing is learnt of the voice
 */
public record KeepUtterances(boolean isOn, int mostMegabytes, boolean isVoiceForgotten) {

  /** Half a gigabyte is four hours of nothing but speech, the words of thousands of birds. */
  private static final KeepUtterances USUAL = new KeepUtterances(false, 500, false);

  /** Checks the range. */
  public KeepUtterances {
    if (mostMegabytes < 1) {
      throw new IllegalArgumentException("no room: " + mostMegabytes);
    }
  }

  /** What holds where the station says nothing: no utterance is kept. */
  public static KeepUtterances usual() {
    return USUAL;
  }
}
