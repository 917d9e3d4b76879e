package org.calamus.adapter.microphone;

/** Makes one channel of many, so that a stereo microphone is heard as one ear. */
final class PcmMono {

  private PcmMono() {}

  /**
   * The mean of the channels.
   *
   * @param pcm 16 bit signed samples, low byte first, the channels in turn
   * @param length how many bytes of it count; an incomplete frame at the end is left out
   * @param channels at least 1
   */
  static short[] mix(byte[] pcm, int length, int channels) {
    short[] mono = new short[length / (2 * channels)];
    int at = 0;
    for (int i = 0; i < mono.length; i++) {
      int sum = 0;
      for (int c = 0; c < channels; c++) {
        sum += (short) ((pcm[at] & 0xff) | (pcm[at + 1] << 8));
        at += 2;
      }
      mono[i] = (short) Math.round((float) sum / channels);
    }
    return mono;
  }
}
