package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.calamus.acoustic.Settings;
import org.calamus.acoustic.WordToBuild;
import org.calamus.adapter.vosk.ModelCache;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.core.speech.VocabularyWord;
import org.calamus.support.Fenwick;

/**
 * Measures how well the console's own grammars are recognised, and what comes of it in the
 * dialogue.
 *
 * <p>Speakers and utterances are split into two halves. Settings may be chosen on the first only
 * ({@code TUNING}); what is published is the second ({@code REPORTING}). Only words that cannot be
 * split, such as the commands, occur in both. The one real speaker cannot be split either: her
 * utterances are, and she took part in the tuning.
 */
final class Recognition {

  private static final Path WORK = Path.of("target", "benchmark").toAbsolutePath();
  private static final Path AUDIO = WORK.resolve("audio");

  private final Wish wish;
  private final PrintStream out;

  private Recognition(Wish wish, PrintStream out) {
    this.wish = wish;
    this.out = out;
  }

  /**
   * Entry point.
   *
   * @param args see {@link Wish}
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    new Recognition(Wish.parse(List.of(args)), System.out).measure();
    System.exit(0); // the recogniser's library keeps threads
  }

  /** Measures a half and prints its tables. */
  static void measure(Half half, boolean showsErrors, PrintStream out)
      throws IOException, InterruptedException {
    List<String> words = new ArrayList<>(List.of(half == Half.TUNING ? "tuning" : "reporting"));
    if (showsErrors) {
      words.add("errors");
    }
    new Recognition(Wish.parse(words), out).measure();
  }

  /** The model of the program's own vocabularies. */
  static ModelFolder model(Path cache) {
    List<WordToBuild> words =
        Fenwick.vocabulary().wordsToPronounce().stream().map(Recognition::word).toList();
    return new ModelCache(cache).open(words, Settings.standard());
  }

  private static WordToBuild word(VocabularyWord word) {
    Optional<String> chain = word.chain().isEmpty() ? Optional.empty() : Optional.of(word.chain());
    return new WordToBuild(word.word(), word.pronunciations(), chain, word.where());
  }

  private void measure() throws IOException, InterruptedException {
    Optional<double[]> babble = Optional.empty();
    if (wish.conditions().stream()
        .anyMatch(c -> c.noise().equals(Optional.of(Noise.Kind.BABBLE)))) {
      babble = Optional.of(Babble.of(wish.half(), AUDIO));
    }
    List<Trial> trials = new ArrayList<>();
    try (ModelFolder model = model(WORK.resolve("model"))) {
      Hearing hearing = new Hearing(model.path(), AUDIO, wish.half(), babble);
      out.printf("%n%s half%n", wish.half());
      for (Condition condition : wish.conditions()) {
        List<Trial> heard = new ArrayList<>();
        for (Speaker speaker : Speakers.there()) {
          if (speaker.half() == wish.half() && speaker.name().startsWith(wish.speaker())) {
            heard.addAll(hearing.hear(speaker, condition, drawn(speaker)));
          }
        }
        heard.forEach(this::show);
        print(condition, heard);
        trials.addAll(heard);
      }
    }
    if (wish.conditions().size() > 1) {
      Tables tables = new Tables(out);
      tables.speech("condition", trials, t -> t.condition().name());
      tables.chatter("condition, not for the console", trials, t -> t.condition().name());
    }
  }

  private void show(Trial trial) {
    if (wish.showsErrors() && !trial.heard().equals(trial.said().words())) {
      out.println(
          trial.condition().name()
              + (" " + trial.speaker().name())
              + (" [" + Verdict.grammar(trial.said()).name() + "] " + trial.verdict())
              + (" said " + trial.said().spoken() + ", heard " + trial.heard()));
    }
  }

  /** What a speaker says: all of each set, or as many as wished, drawn by a fixed seed. */
  private List<Said> drawn(Speaker speaker) throws IOException {
    Map<String, List<Said>> sets = new LinkedHashMap<>();
    for (Said said : utterances()) {
      boolean isPrompt = said.isChatter() && said.spoken().endsWith(".g722");
      if (wish.wants(said)
          && (!isPrompt || speaker.group().equals("person"))
          && speaker.mouth().canSay(said)) {
        sets.computeIfAbsent(said.set(), s -> new ArrayList<>()).add(said);
      }
    }
    List<Said> drawn = new ArrayList<>();
    for (List<Said> set : sets.values()) {
      if (wish.limit().isPresent() && wish.limit().get() < set.size()) {
        Collections.shuffle(set, new Random(wish.half().ordinal()));
        drawn.addAll(set.subList(0, wish.limit().get()));
      } else {
        drawn.addAll(set);
      }
    }
    return drawn;
  }

  private List<Said> utterances() throws IOException {
    List<Said> utterances = new ArrayList<>(UtteranceSets.of(wish.half()));
    utterances.addAll(Chatter.of(wish.half()));
    for (Path folder : RecordedPrompts.folders()) {
      List<String> prompts =
          RecordedPrompts.prompts(folder).stream().map(p -> p.getFileName().toString()).toList();
      utterances.addAll(Chatter.atMoments(prompts, wish.half()));
    }
    return utterances;
  }

  private void print(Condition condition, List<Trial> heard) {
    Tables tables = new Tables(out);
    String name = condition.name();
    tables.speech(name + ", set", heard, t -> t.said().set() + ", " + t.speaker().group());
    tables.speech(name + ", speaker", heard, t -> t.speaker().name());
    tables.chatter(
        name + ", not for the console", heard, t -> t.said().set() + ", " + t.speaker().name());
  }
}
