package org.calamus.benchmark;

import java.nio.file.Path;
import java.util.Arrays;
import org.calamus.adapter.microphone.WavSource;
import org.calamus.port.AudioSource;

/** Reads recordings as the ears would get them: 16 kHz, one channel. */
final class Recordings {

  private Recordings() {}

  /** All samples of a WAV file, in steps of 16 bits. */
  static double[] read(Path wav) {
    double[] all = new double[AudioSource.RATE];
    int length = 0;
    try (WavSource source = new WavSource(wav, WavSource.Pace.FAST)) {
      source.open();
      AudioSource.Read read = source.read();
      while (read instanceof AudioSource.Block block) {
        short[] samples = block.samples();
        if (length + samples.length > all.length) {
          all = Arrays.copyOf(all, Math.max(2 * all.length, length + samples.length));
        }
        for (short sample : samples) {
          all[length++] = sample;
        }
        read = source.read();
      }
    }
    return Arrays.copyOf(all, length);
  }
}
