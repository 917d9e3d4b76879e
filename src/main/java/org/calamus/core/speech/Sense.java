package org.calamus.core.speech;

import static java.util.Map.Entry.comparingByValue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Tells which of the ways to hear an utterance makes sense, and how sure that is. Ways that mean
 * the same count together, such as "moult" and "molt"; ways that mean nothing where they are said
 * hardly count, since a bander who is asked for a wing says no "sixty fat". So the confidence is
 * that of the meaning, not of a word: "hatched" may be in doubt where "hatched this year" is not.
 *
 * <p>The weights were chosen on the tuning half (docs/benchmarks.md): with them and the limits of
 * {@link Credibility.Limits#usual()} a tenth more values came at once in noise than by the
 * confidence of words, and hardly a wrong one more.
 */
final class Sense {

  /**
   * How much a way that means nothing counts beside those that mean something. Ways with an unknown
   * word in it count fully, since somebody may talk of other things; and all do beside a word
   * alone, which has nothing that must fit: any short sound is like one.
   */
  private static final double NONSENSE = 0.01;

  private final Utterance utterance;
  private final Map<Object, Double> shares = new LinkedHashMap<>();
  private final Map<Object, List<Word>> words = new LinkedHashMap<>();
  private final List<Hypothesis> senseless = new ArrayList<>();

  private Sense(Utterance utterance) {
    this.utterance = utterance;
  }

  /**
   * The utterance heard in the likeliest way that makes sense, each word as sure as its meaning; as
   * it is where no way does, or where nothing is known of other ways.
   *
   * @param sense what a meaning comes to where it is said, a value for the same value; empty where
   *     it comes to nothing
   */
  static Utterance in(
      Utterance utterance,
      Function<List<Word>, Meaning> meaning,
      Function<Meaning, Optional<?>> sense) {
    Sense all = new Sense(utterance);
    for (Hypothesis hypothesis : utterance.hypotheses()) {
      Meaning meant = meaning.apply(hypothesis.words());
      Optional<?> comesTo = ofItself(meant).isEmpty() ? Optional.empty() : sense.apply(meant);
      all.count(hypothesis, comesTo, isOneThing(meant));
    }
    return all.likeliest();
  }

  private void count(Hypothesis hypothesis, Optional<?> comesTo, boolean isOneThing) {
    boolean isFirst = hypothesis.equals(utterance.hypotheses().get(0));
    if (comesTo.filter(c -> isFirst || isOneThing || shares.containsKey(c)).isPresent()) {
      shares.merge(comesTo.get(), hypothesis.share(), Double::sum);
      words.putIfAbsent(comesTo.get(), hypothesis.words());
    } else {
      senseless.add(hypothesis);
    }
  }

  private Utterance likeliest() {
    if (shares.isEmpty()) {
      return utterance;
    }
    Map.Entry<Object, Double> best = Collections.max(shares.entrySet(), comparingByValue());
    List<Word> said = words.get(best.getKey());
    double nonsense = said.size() == 1 ? 1 : NONSENSE;
    double others =
        senseless.stream().mapToDouble(h -> h.share() * (isUnknown(h) ? 1 : nonsense)).sum();
    double sum = others + shares.values().stream().mapToDouble(s -> s).sum();
    double sure = Math.min(1, best.getValue() / sum);
    return utterance.with(said.stream().map(w -> w.with(sure)).toList());
  }

  private static boolean isUnknown(Hypothesis hypothesis) {
    return hypothesis.words().stream().anyMatch(w -> w.text().equals(Word.UNKNOWN));
  }

  /** A meaning stands for itself; empty where there is none in it. */
  static Optional<Meaning> ofItself(Meaning meaning) {
    boolean isSense =
        meaning instanceof Meaning.Values values
            ? values.items().stream().noneMatch(i -> i.heard() instanceof Heard.No)
            : !(meaning instanceof Meaning.Unclear || meaning instanceof Meaning.Chatter);
    return isSense ? Optional.of(meaning) : Optional.empty();
  }

  /**
   * Values for several fields in one breath are made too easily of words that mean nothing, such as
   * "thirty six kind two" of "thirty six point two".
   */
  private static boolean isOneThing(Meaning meaning) {
    return !(meaning instanceof Meaning.Values values) || values.items().size() == 1;
  }
}
