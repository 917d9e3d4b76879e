package org.calamus.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a run shall measure, as asked for on the command line.
 *
 * @param half the half
 * @param showsErrors whether each utterance that was not heard rightly is shown
 * @param hasPeer whether the peer listens as well
 * @param hasDelays whether the time until something was heard is measured as well
 * @param showsConfidences whether it is shown what would come of it with other limits of confidence
 * @param conditions how the utterances reach the microphone
 * @param limit how many utterances of each set and speaker; empty for all of them in quiet, and in
 *     other conditions for one of each set and of one speaker of each kind, and four of what is not
 *     for the console
 * @param turn how many utterances one of two speakers in a room says before the other does; empty
 *     where each speaks alone
 * @param parts {@code speech}, {@code chatter} or both
 * @param speaker only speakers whose name begins like this
 * @param set only sets whose name begins like this
 */
record Wish(
    Half half,
    boolean showsErrors,
    boolean hasPeer,
    boolean hasDelays,
    boolean showsConfidences,
    List<Condition> conditions,
    Optional<Integer> limit,
    Optional<Integer> turn,
    List<String> parts,
    String speaker,
    String set) {

  /** Copies the lists. */
  Wish {
    conditions = List.copyOf(conditions);
    parts = List.copyOf(parts);
  }

  /** Reads the words of a command line; docs/benchmarks.md lists them. */
  static Wish parse(List<String> words) {
    Half half = Half.REPORTING;
    boolean showsErrors = false;
    boolean hasPeer = false;
    boolean hasDelays = false;
    boolean showsConfidences = false;
    Optional<Integer> limit = Optional.empty();
    Optional<Integer> turn = Optional.empty();
    List<Condition> conditions = new ArrayList<>();
    List<String> parts = new ArrayList<>();
    String speaker = "";
    String set = "";
    for (String word : words) {
      String value = word.substring(word.indexOf('=') + 1);
      if (word.equals("tuning") || word.equals("reporting")) {
        half = word.equals("tuning") ? Half.TUNING : Half.REPORTING;
      } else if (word.equals("errors")) {
        showsErrors = true;
      } else if (word.equals("all")) {
        conditions.addAll(Condition.ALL);
        hasPeer = true;
        hasDelays = true;
      } else if (word.equals("delays")) {
        hasDelays = true;
      } else if (word.equals("peer")) {
        hasPeer = true;
      } else if (word.equals("confidences")) {
        showsConfidences = true;
      } else if (word.equals("speech") || word.equals("chatter")) {
        parts.add(word);
      } else if (word.startsWith("limit=")) {
        limit = Optional.of(Integer.parseInt(value));
      } else if (word.startsWith("turn=")) {
        turn = Optional.of(Integer.parseInt(value));
      } else if (word.startsWith("speaker=")) {
        speaker = value;
      } else if (word.startsWith("set=")) {
        set = value;
      } else {
        conditions.add(
            Condition.parse(word).orElseThrow(() -> new IllegalArgumentException("what: " + word)));
      }
    }
    return new Wish(
        half,
        showsErrors,
        hasPeer,
        hasDelays,
        showsConfidences,
        conditions.isEmpty() ? List.of(Condition.CLEAN) : conditions,
        limit,
        turn,
        parts.isEmpty() ? List.of("speech", "chatter") : parts,
        speaker,
        set);
  }

  /** How many utterances of each set and speaker there are in a condition. */
  int limit(Condition condition, Said said) {
    int usual = condition.equals(Condition.CLEAN) ? Integer.MAX_VALUE : said.isChatter() ? 4 : 1;
    return limit.orElse(usual);
  }

  /** Whether only one speaker of each kind is heard. */
  boolean hasOneOfEachKindIn(Condition condition) {
    return limit.isEmpty() && !condition.equals(Condition.CLEAN);
  }

  /** Whether an utterance is wanted. */
  boolean wants(Said said) {
    return parts.contains(said.isChatter() ? "chatter" : "speech") && said.set().startsWith(set);
  }
}
