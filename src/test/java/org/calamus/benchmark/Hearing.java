package org.calamus.benchmark;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.adapter.vosk.VoskEars;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;
import org.calamus.port.AudioSource;

/** Lets the program's own ears hear a speaker, and gives what was heard to the dialogue. */
final class Hearing {

  private final Path model;
  private final Path audio;
  private final Half half;
  private final Optional<double[]> babble;
  private final Map<List<String>, Grammar> grammars = new HashMap<>();

  /**
   * Hearing with a model.
   *
   * @param model its folder
   * @param audio where recordings are kept
   * @param half noises are drawn from other seeds in each
   * @param babble the track of babble; empty where no condition has any
   */
  Hearing(Path model, Path audio, Half half, Optional<double[]> babble) {
    this.model = model;
    this.audio = audio;
    this.half = half;
    this.babble = babble;
  }

  /** Lets a speaker say all of it in one condition. */
  List<Trial> hear(Speaker speaker, Condition condition, List<Said> said)
      throws IOException, InterruptedException {
    List<Path> recordings = new ArrayList<>();
    for (Said one : said) {
      recordings.add(speaker.recording(one, audio));
    }
    Scene scene = new Scene(recordings, condition, noise(speaker, condition));
    List<Grammar> asked = said.stream().map(this::grammar).toList();
    Room.Result result = Room.hear(model, VoskEars.Settings.usual(), scene::next, asked);
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < said.size(); i++) {
      List<Utterance> heard = result.utterances().get(i);
      String text = heard.stream().map(Utterance::text).collect(Collectors.joining(" | "));
      double seconds = (double) Recordings.read(recordings.get(i)).length / AudioSource.RATE;
      Verdict verdict = Verdict.of(said.get(i), heard);
      trials.add(new Trial(speaker, condition, said.get(i), seconds, text, verdict));
    }
    return trials;
  }

  private Optional<Noise> noise(Speaker speaker, Condition condition) {
    long seed = (half + speaker.name() + condition.name()).hashCode();
    return condition
        .noise()
        .map(
            kind ->
                switch (kind) {
                  case WHITE -> Noise.white(seed);
                  case PINK -> Noise.pink(seed);
                  case BABBLE -> Noise.loop(babble.orElseThrow(), seed);
                });
  }

  private Grammar grammar(Said said) {
    return grammars.computeIfAbsent(said.before(), before -> Verdict.grammar(said));
  }
}
