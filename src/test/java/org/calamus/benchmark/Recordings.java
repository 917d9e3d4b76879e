package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
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

  /** The recordings in a folder, in the order of their names; none where it is not there. */
  static List<String> in(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.map(Path::toString)
          .filter(f -> f.matches(".*\\.(g722|gsm|wav|ogg)"))
          .sorted()
          .toList();
    }
  }

  /** Makes a recording of the recogniser's own kind of a file of any other kind. */
  static void convert(Path from, Path wav) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("ffmpeg", "-loglevel", "error", "-y"));
    if (from.toString().endsWith(".g722")) {
      command.addAll(List.of("-f", "g722"));
    }
    command.addAll(List.of("-i", from.toString(), "-ar", "16000", "-ac", "1"));
    command.addAll(List.of("-c:a", "pcm_s16le", wav.toString()));
    Speaker.run("", command);
  }
}
