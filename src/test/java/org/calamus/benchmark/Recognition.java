package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
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
  private final List<Said> utterances;
  private final Judge judge = new Judge();

  private Recognition(Wish wish, PrintStream out) throws IOException {
    this.wish = wish;
    this.utterances = utterances(wish.half());
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
    Optional<Peer> peer = Optional.empty();
    if (wish.hasPeer() && Peer.isThere()) {
      peer = Optional.of(new Peer(WORK.resolve("peer")));
    }
    List<Trial> trials = new ArrayList<>();
    try (ModelFolder model = model(WORK.resolve("model"))) {
      Hearing hearing = new Hearing(model.path(), AUDIO, wish.half(), babble, judge, peer);
      out.printf("%n%s half%n", wish.half());
      for (Condition condition : wish.conditions()) {
        List<Trial> heard = new ArrayList<>();
        for (Speaker speaker : Speakers.there()) {
          if (speaker.half() == wish.half() && speaker.name().startsWith(wish.speaker())) {
            heard.addAll(hearing.hear(speaker, condition, drawn(speaker)));
          }
        }
        if (peer.isPresent()) {
          heard = heardByPeer(peer.get(), heard);
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

  /** The same trials, heard by the peer as well. */
  private List<Trial> heardByPeer(Peer peer, List<Trial> trials)
      throws IOException, InterruptedException {
    List<String> names = new ArrayList<>();
    List<Peer.Sound> sounds = new ArrayList<>();
    Map<Speaker, Integer> counts = new HashMap<>();
    for (Trial trial : trials) {
      int index = counts.merge(trial.speaker(), 1, Integer::sum) - 1;
      names.add(Hearing.name(trial.speaker(), trial.condition(), index));
      sounds.add(new Peer.Sound(names.get(names.size() - 1), judge.grammar(trial.said())));
    }
    Peer.Result result = peer.hear(sounds, PeerSettings.DEFAULTS);
    peer.forget();
    List<Trial> both = new ArrayList<>();
    for (int i = 0; i < trials.size(); i++) {
      Trial trial = trials.get(i);
      String text = result.words().getOrDefault(names.get(i), "");
      both.add(trial.with(new Outcome(text, judge.of(trial.said(), text))));
    }
    return both;
  }

  private void show(Trial trial) {
    boolean isWrong =
        !Accuracy.words(trial.ours().heard()).equals(Accuracy.words(trial.said().words()));
    if (wish.showsErrors() && isWrong) {
      String peer = trial.peer().map(p -> ", by the peer " + p.heard()).orElse("");
      out.println(
          trial.condition().name()
              + (" " + trial.speaker().name())
              + (" [" + judge.grammar(trial.said()).name() + "] " + trial.ours().verdict())
              + (" said " + trial.said().spoken() + ", heard " + trial.ours().heard() + peer));
    }
  }

  /** What a speaker says: all of each set, or as many as wished, drawn by a fixed seed. */
  private List<Said> drawn(Speaker speaker) {
    Map<String, List<Said>> sets = new LinkedHashMap<>();
    for (Said said : utterances) {
      if (wish.wants(said) && speaker.canSay(said)) {
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

  private static List<Said> utterances(Half half) throws IOException {
    List<Said> utterances = new ArrayList<>(UtteranceSets.of(half));
    utterances.addAll(Chatter.all(half));
    return utterances;
  }

  private void print(Condition condition, List<Trial> heard) {
    Tables tables = new Tables(out);
    String name = condition.name();
    tables.headline(name, heard);
    tables.fields(name, heard);
    tables.speech(name + ", speaker", heard, t -> t.speaker().name());
    tables.chatter(
        name + ", not for the console", heard, t -> t.said().set() + ", " + t.speaker().group());
  }
}
