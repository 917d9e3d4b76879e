package org.calamus.benchmark;

import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Prints what came of many utterances, of ours beside the peer's where it listened: once with words
 * believed of which it is sure enough, and once with all its words believed.
 */
final class Tables {

  private static final String TOGETHER = "together";

  private final PrintStream out;

  /** Tables on a stream. */
  Tables(PrintStream out) {
    this.out = out;
  }

  /** The sums of the two listeners. */
  private record Pair(Accuracy ours, Accuracy peer, Accuracy believed) {
    private Pair() {
      this(new Accuracy(), new Accuracy(), new Accuracy());
    }

    private void add(Trial trial) {
      String said = trial.said().words();
      ours.add(said, trial.ours());
      trial.peer().ifPresent(p -> peer.add(said, p.with(PeerLimits.SWEPT)));
      trial.peer().ifPresent(p -> believed.add(said, p.sure()));
    }

    private boolean hasPeer() {
      return peer.utterances() > 0;
    }

    private String ahead() {
      return hasPeer() ? ahead(ours, peer) : "";
    }

    /** Who has more right values; with a star where it is hardly chance. */
    private static String ahead(Accuracy ours, Accuracy other) {
      int one = ours.of(Verdict.RIGHT);
      int two = other.of(Verdict.RIGHT);
      boolean isSure =
          Wilson.of(one, ours.utterances()).isApartFrom(Wilson.of(two, other.utterances()));
      return (one > two ? "ours" : one < two ? "PEER" : "=") + (isSure ? " *" : "");
    }
  }

  /** Speech that is meant for the console, one row for each value of a key. */
  void speech(String title, List<Trial> trials, Function<Trial, String> key) {
    Map<String, Pair> rows = new TreeMap<>();
    Pair all = new Pair();
    for (Trial trial : trials) {
      if (!trial.said().isChatter()) {
        rows.computeIfAbsent(key.apply(trial), k -> new Pair()).add(trial);
        all.add(trial);
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    String words = String.format(Locale.ROOT, "%6s %7s", "WER %", "words %");
    String values = String.format(Locale.ROOT, " %5s %5s %5s", "value", "again", "wrong");
    String peer = " |" + words + values + " ahead  | believed" + values + " ahead";
    out.printf("%n%-28s %5s %s%s%n", title, "said", words + values, all.hasPeer() ? peer : "");
    rows.forEach(this::row);
    row(TOGETHER, all);
  }

  private void row(String name, Pair pair) {
    String ours = words(pair.ours) + values(pair.ours);
    String peer =
        String.format(
            Locale.ROOT,
            " |%s%s %-6s |         %s %s",
            words(pair.peer),
            values(pair.peer),
            pair.ahead(),
            values(pair.believed),
            Pair.ahead(pair.ours, pair.believed));
    String shown = pair.hasPeer() ? peer : "";
    out.printf("%-28s %5d %s%s%n", name, pair.ours.utterances(), ours, shown);
  }

  private static String words(Accuracy sum) {
    return String.format(
        Locale.ROOT,
        "%6.1f %7.1f",
        sum.wordErrorRate(),
        100.0 * sum.wholeRight() / Math.max(1, sum.utterances()));
  }

  private static String values(Accuracy sum) {
    return String.format(
        Locale.ROOT,
        " %5d %5d %5d",
        sum.of(Verdict.RIGHT),
        sum.of(Verdict.AGAIN),
        sum.of(Verdict.WRONG));
  }

  /** A row for each set, with right values / asked again / wrong ones by kind of speaker. */
  void fields(String title, List<Trial> trials) {
    Map<String, Predicate<Trial>> kinds = new LinkedHashMap<>();
    kinds.put("person", t -> t.speaker().group().equals("person"));
    kinds.put("flite, festival", t -> t.speaker().group().matches("flite|festival"));
    kinds.put("espeak", t -> t.speaker().group().equals("espeak"));
    Map<String, Map<String, Pair>> rows = new TreeMap<>();
    for (Trial trial : trials) {
      if (!trial.said().isChatter()) {
        Map<String, Pair> row = rows.computeIfAbsent(trial.said().set(), s -> new TreeMap<>());
        kinds.forEach(
            (kind, isOne) -> {
              if (isOne.test(trial)) {
                row.computeIfAbsent(kind, k -> new Pair()).add(trial);
              }
            });
        row.computeIfAbsent(TOGETHER, k -> new Pair()).add(trial);
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    out.printf("%n%-24s", title);
    kinds.keySet().forEach(k -> out.printf(" %-19s", k));
    out.printf("%n%-24s", "value/again/wrong");
    kinds.keySet().forEach(k -> out.printf(" %-9s %-9s", "ours", "peer"));
    out.printf(" ahead%n");
    rows.forEach(
        (name, row) -> {
          out.printf("%-24s", name);
          for (String kind : kinds.keySet()) {
            Pair pair = row.getOrDefault(kind, new Pair());
            out.printf(" %-9s %-9s", counts(pair.ours), counts(pair.peer));
          }
          out.printf(" %s%n", row.get(TOGETHER).ahead());
        });
  }

  private static String counts(Accuracy sum) {
    return sum.utterances() == 0
        ? "-"
        : sum.of(Verdict.RIGHT) + "/" + sum.of(Verdict.AGAIN) + "/" + sum.of(Verdict.WRONG);
  }

  /** The three rates that matter, each with its range. */
  void headline(String title, List<Trial> trials) {
    Pair all = new Pair();
    trials.stream().filter(t -> !t.said().isChatter()).forEach(all::add);
    if (all.ours.utterances() == 0) {
      return;
    }
    out.printf("%n%s: %d utterances, %% and 95 %% range%n", title, all.ours.utterances());
    line("whole utterances right", all, Accuracy::wholeRight);
    line("right value at once", all, a -> a.of(Verdict.RIGHT));
    line("wrong value taken", all, a -> a.of(Verdict.WRONG));
  }

  private void line(String name, Pair pair, Function<Accuracy, Integer> count) {
    String peer =
        pair.hasPeer()
            ? String.format(
                Locale.ROOT,
                "   peer %-18s   believed %s",
                range(count, pair.peer),
                range(count, pair.believed))
            : "";
    out.printf("  %-24s ours %-18s%s%n", name, range(count, pair.ours), peer);
  }

  private static String range(Function<Accuracy, Integer> count, Accuracy sum) {
    return Wilson.text(count.apply(sum), sum.utterances());
  }

  /** What one listener made of sound that is not meant for the console. */
  private static final class Chatter {
    private int words;
    private int asked;
    private int taken;

    private void add(Outcome outcome) {
      words += (int) Accuracy.words(outcome.heard()).stream().filter(Chatter::isWord).count();
      asked += outcome.verdict() == Verdict.AGAIN ? 1 : 0;
      taken += outcome.verdict() == Verdict.WRONG ? 1 : 0;
    }

    private static boolean isWord(String text) {
      return !text.equals("|") && !text.equals("[unk]");
    }

    private String counts(double minutes) {
      return String.format(
          Locale.ROOT, " %5d %5d %8.2f", asked, taken, taken / Math.max(1e-9, minutes));
    }

    private String ahead(Chatter other) {
      return taken < other.taken ? "ours" : taken > other.taken ? "PEER" : "=";
    }
  }

  /** Sound that is not meant for the console, one row for each value of a key. */
  void chatter(String title, List<Trial> trials, Function<Trial, String> key) {
    Map<String, List<Trial>> rows = new TreeMap<>();
    for (Trial trial : trials) {
      if (trial.said().isChatter()) {
        rows.computeIfAbsent(key.apply(trial), k -> new java.util.ArrayList<>()).add(trial);
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    boolean hasPeer = trials.stream().anyMatch(t -> t.peer().isPresent());
    String counts = String.format(Locale.ROOT, " %5s %5s %8s", "asked", "taken", "a minute");
    String head = String.format(Locale.ROOT, "%6s", "words") + counts;
    String peer = " |" + head + " ahead | believed" + counts + " ahead";
    out.printf("%n%-28s %7s %s%s%n", title, "minutes", head, hasPeer ? peer : "");
    rows.forEach((name, row) -> chatter(name, row, hasPeer));
    chatter(TOGETHER, trials.stream().filter(t -> t.said().isChatter()).toList(), hasPeer);
  }

  private void chatter(String name, List<Trial> row, boolean hasPeer) {
    Chatter ours = new Chatter();
    Chatter peer = new Chatter();
    Chatter believed = new Chatter();
    double minutes = 0;
    for (Trial trial : row) {
      minutes += trial.seconds() / 60;
      ours.add(trial.ours());
      trial.peer().ifPresent(p -> peer.add(p.with(PeerLimits.SWEPT)));
      trial.peer().ifPresent(p -> believed.add(p.sure()));
    }
    String other =
        String.format(
            Locale.ROOT,
            " |%6d%s %-5s |         %s %s",
            peer.words,
            peer.counts(minutes),
            ours.ahead(peer),
            believed.counts(minutes),
            ours.ahead(believed));
    out.printf(
        Locale.ROOT,
        "%-28s %7.1f %6d%s%s%n",
        name,
        minutes,
        ours.words,
        ours.counts(minutes),
        hasPeer ? other : "");
  }
}
