package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.port.AudioSource;

/**
 * Measures how long it takes from the end of speech until it was heard, at the pace of speech, and
 * how fast the ears hear when sound comes as fast as they take it.
 */
final class Delays {

  private final Path model;
  private final Path audio;
  private final Judge judge;
  private final List<Double> sinceSpeech = new ArrayList<>();
  private final List<Double> sinceSound = new ArrayList<>();
  private final List<Double> factors = new ArrayList<>();

  /** Delays of the ears with a model. */
  Delays(Path model, Path audio, Judge judge) {
    this.model = model;
    this.audio = audio;
    this.judge = judge;
  }

  /** Lets a speaker say something at the pace of speech, and once more as fast as can be. */
  void measure(Speaker speaker, List<Said> said) throws IOException, InterruptedException {
    List<Path> recordings = new ArrayList<>();
    for (Said one : said) {
      recordings.add(speaker.recording(one, audio));
    }
    Room.Result paced = hear(recordings, said, Room.Pace.REAL);
    for (int i = 0; i < said.size(); i++) {
      Optional<Room.Answer> answer = paced.answered().get(i);
      if (answer.isPresent()) {
        int end = Scene.BEFORE + SpeechLevel.end(Recordings.read(recordings.get(i)));
        double since = answer.get().sinceSound() / 1e9;
        sinceSound.add(since);
        sinceSpeech.add((double) (answer.get().samples() - end) / AudioSource.RATE + since);
      }
    }
    factors.add(hear(recordings, said, Room.Pace.FAST).realTimeFactor());
  }

  private Room.Result hear(List<Path> recordings, List<Said> said, Room.Pace pace)
      throws InterruptedException {
    Scene scene = new Scene(recordings, Condition.CLEAN, Optional.empty());
    return Room.hear(
        model,
        VoskEars.Settings.usual(),
        scene::next,
        said.stream().map(judge::grammar).toList(),
        pace);
  }

  /** Prints what was measured. */
  void print(PrintStream out) {
    out.printf("%n%-44s %5s %8s %8s %8s%n", "how quickly", "of", "median", "90 %", "worst");
    row("end of speech until heard, s", sinceSpeech, out);
    row("last sound until heard, s", sinceSound, out);
    row("time to hear / length of sound, one core", factors, out);
  }

  private static void row(String name, List<Double> values, PrintStream out) {
    if (values.isEmpty()) {
      return;
    }
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    int last = sorted.size() - 1;
    out.printf(
        Locale.ROOT,
        "%-44s %5d %8.3f %8.3f %8.3f%n",
        name,
        sorted.size(),
        sorted.get(last / 2),
        sorted.get((int) Math.round(0.9 * last)),
        sorted.get(last));
  }
}
