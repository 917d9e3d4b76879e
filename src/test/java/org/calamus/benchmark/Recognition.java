package org.calamus.benchmark;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.calamus.acoustic.Settings;
import org.calamus.adapter.vosk.ModelCache;
import org.calamus.adapter.vosk.ModelFolder;
import org.calamus.boot.SpeechModel;
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
    List<String> words = new ArrayList<>(List.of(args));
    if (words.remove("sweep")) {
      words.add("tuning");
      new Recognition(Wish.parse(words), System.out).sweep();
    } else if (words.remove("limits")) {
      words.add("tuning");
      new Recognition(Wish.parse(words), System.out).limits();
    } else {
      new Recognition(Wish.parse(words), System.out).measure();
    }
    System.exit(0); // the recogniser's library keeps threads
  }

  /** Measures what is published and prints its tables. */
  static void measure(PrintStream out) throws IOException, InterruptedException {
    new Recognition(Wish.parse(List.of("reporting", "all")), out).measure();
  }

  /** The model of the program's own vocabularies. */
  static ModelFolder model(Path cache) {
    return new ModelCache(cache)
        .open(SpeechModel.wordsAndPhrases(Fenwick.vocabulary()), Settings.standard());
  }

  private void measure() throws IOException, InterruptedException {
    Optional<Peer> peer = peer();
    Split.print(wish.half(), utterances, judge, out);
    List<Trial> trials = new ArrayList<>();
    try (ModelFolder model = model(WORK.resolve("model"))) {
      Listeners listeners = listeners(model, peer);
      for (Condition condition : wish.conditions()) {
        List<Trial> heard = listeners.hear(condition, rooms(condition));
        if (peer.isPresent()) {
          heard = listeners.hear(peer.get(), PeerSettings.SWEPT, PeerLimits.SWEPT.doubt(), heard);
          peer.get().forget();
        }
        heard.forEach(this::show);
        print(condition, heard);
        trials.addAll(heard);
      }
      if (wish.conditions().size() > 1) {
        byCondition(trials);
      }
      if (wish.showsConfidences()) {
        new ConfidenceSweep(judge, out).print(trials);
      }
      if (wish.hasDelays()) {
        delays(model, listeners);
      }
    }
  }

  private Optional<Peer> peer() throws IOException {
    if (!wish.hasPeer()) {
      return Optional.empty();
    }
    if (!Peer.isThere()) {
      out.printf("the peer is not there (packages pocketsphinx, pocketsphinx-en-us)%n");
      return Optional.empty();
    }
    out.printf("peer: PocketSphinx, %s%n", PeerSettings.SWEPT);
    out.printf("found by: %s%n", PeerSettings.FOUND_BY);
    out.printf("it must be so sure: %s; found by: %s%n%n", PeerLimits.SWEPT, PeerLimits.FOUND_BY);
    return Optional.of(new Peer(WORK.resolve("peer")));
  }

  private Listeners listeners(ModelFolder model, Optional<Peer> peer)
      throws IOException, InterruptedException {
    return new Listeners(
        new Hearing(model.path(), AUDIO, wish.half(), babble(), judge, peer), judge);
  }

  /** Looks for the peer's best settings; always on the tuning half. */
  private void sweep() throws IOException, InterruptedException {
    search(
        (peer, listeners, trials) -> {
          Tables tables = new Tables(out);
          tables.headline("ours", trials);
          tables.chatter("ours, not for the console", trials, t -> t.said().set());
          int taken =
              (int)
                  trials.stream()
                      .filter(t -> t.said().isChatter() && t.ours().verdict() == Verdict.WRONG)
                      .count();
          double doubt = PeerLimits.SWEPT.doubt();
          new Sweep(settings -> listeners.hear(peer, settings, doubt, trials), taken, out).run();
        });
  }

  /** Looks for the limits of confidence that suit the peer best; always on the tuning half. */
  private void limits() throws IOException, InterruptedException {
    search(
        (peer, listeners, trials) ->
            new LimitSweep(doubt -> listeners.hear(peer, PeerSettings.SWEPT, doubt, trials), out)
                .run());
  }

  /** Looks for something of the peer's, over trials that our own ears have heard. */
  private interface Search {
    void run(Peer peer, Listeners listeners, List<Trial> trials)
        throws IOException, InterruptedException;
  }

  private void search(Search search) throws IOException, InterruptedException {
    Peer peer = new Peer(WORK.resolve("sweep"));
    List<Trial> trials = new ArrayList<>();
    try (ModelFolder model = model(WORK.resolve("model"))) {
      Listeners listeners = listeners(model, Optional.of(peer));
      for (Condition condition : wish.conditions()) {
        trials.addAll(listeners.hear(condition, rooms(condition)));
      }
      search.run(peer, listeners, trials);
    }
    peer.forget();
  }

  private void delays(ModelFolder model, Listeners listeners)
      throws IOException, InterruptedException {
    Delays delays = new Delays(model.path(), AUDIO, judge);
    for (Speaker speaker : oneOfEachKind(mine())) {
      List<Said> speech = new ArrayList<>(drawn(speaker, Condition.CLEAN));
      speech.removeIf(Said::isChatter);
      Collections.shuffle(speech, new Random(speaker.name().hashCode()));
      if (!speech.isEmpty()) {
        delays.measure(speaker, speech.subList(0, Math.min(12, speech.size())));
      }
    }
    delays.print(out);
    if (wish.hasPeer()) {
      out.printf(
          Locale.ROOT,
          "the peer: time over length of sound %.3f, loading included; memory at its peak %.0f MB%n",
          listeners.peerRealTimeFactor(),
          listeners.peerMegabytes());
    }
  }

  /** Who says what in a condition, in which room. */
  private List<List<Turn>> rooms(Condition condition) throws IOException {
    List<Speaker> speakers = wish.hasOneOfEachKindIn(condition) ? oneOfEachKind(mine()) : mine();
    Map<Speaker, List<Said>> said = new LinkedHashMap<>();
    speakers.forEach(s -> said.put(s, drawn(s, condition)));
    said.values().removeIf(List::isEmpty);
    return wish.turn().map(length -> Turn.byTwo(said, length)).orElse(Turn.alone(said));
  }

  private static List<Speaker> oneOfEachKind(List<Speaker> speakers) {
    Map<String, Speaker> kinds = new LinkedHashMap<>();
    speakers.forEach(s -> kinds.putIfAbsent(s.group(), s));
    return List.copyOf(kinds.values());
  }

  /** The speakers of the half that are wished for and can be heard here. */
  private List<Speaker> mine() throws IOException {
    return Speakers.there().stream()
        .filter(s -> s.half() == wish.half() && s.name().startsWith(wish.speaker()))
        .toList();
  }

  private Optional<double[]> babble() throws IOException, InterruptedException {
    boolean isWished =
        wish.conditions().stream().anyMatch(c -> c.noise().equals(Optional.of(Noise.Kind.BABBLE)));
    return isWished ? Optional.of(Babble.of(wish.half(), AUDIO)) : Optional.empty();
  }

  private void show(Trial trial) {
    boolean isRight =
        Accuracy.words(trial.ours().heard()).equals(Accuracy.words(trial.said().words()));
    if (wish.showsErrors() && !(isRight && trial.ours().verdict() == Verdict.RIGHT)) {
      String peer = trial.peer().map(p -> ", by the peer " + p.sure().heard()).orElse("");
      out.println(
          trial.condition().name()
              + (" " + trial.speaker().name())
              + (" [" + judge.grammar(trial.said()).name() + "] " + trial.ours().verdict())
              + (" said " + trial.said().spoken() + ", heard " + trial.ours().heard())
              + (" (" + trial.ours().detail() + ")" + peer));
    }
  }

  /** What a speaker says: all of each set, or as many as wished, drawn by a fixed seed. */
  private List<Said> drawn(Speaker speaker, Condition condition) {
    Map<String, List<Said>> sets = new LinkedHashMap<>();
    for (Said said : utterances) {
      if (wish.wants(said) && speaker.canSay(said)) {
        sets.computeIfAbsent(said.set(), s -> new ArrayList<>()).add(said);
      }
    }
    List<Said> drawn = new ArrayList<>();
    for (List<Said> set : sets.values()) {
      int limit = wish.limit(condition, set.get(0));
      if (limit < set.size()) {
        Collections.shuffle(set, new Random(speaker.name().hashCode()));
      }
      drawn.addAll(set.subList(0, Math.min(limit, set.size())));
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
    tables.speech(name + ", kind of speaker", heard, t -> t.speaker().group());
    tables.speech(name + ", speaker", heard, t -> t.speaker().name());
    tables.chatter(
        name + ", not for the console", heard, t -> t.said().set() + ", " + t.speaker().group());
  }

  private void byCondition(List<Trial> trials) {
    Tables tables = new Tables(out);
    tables.speech("condition", trials, t -> t.condition().name());
    List<Trial> human = trials.stream().filter(t -> t.speaker().group().equals("person")).toList();
    tables.speech("condition, person", human, t -> t.condition().name());
    List<Trial> others =
        trials.stream().filter(t -> !t.speaker().group().equals("espeak")).toList();
    tables.speech("condition, without espeak", others, t -> t.condition().name());
    tables.chatter("condition, not for the console", trials, t -> t.condition().name());
  }
}
