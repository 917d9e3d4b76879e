package org.calamus.benchmark;

import java.util.List;
import org.calamus.core.speech.Word;

/**
 * How the peer heard an utterance.
 *
 * @param sure what comes of it if all its words are believed
 * @param doubted what comes of it if one of them is not
 * @param confidence how sure it is of the word of which it is least sure, 0 to 1
 * @param isAlone whether it heard one word only
 */
record PeerOutcome(Outcome sure, Outcome doubted, double confidence, boolean isAlone) {

  /** What came of words in the dialogue. */
  static PeerOutcome of(Said said, List<Word> words, Judge judge) {
    String text = Outcome.text(words);
    double least = words.stream().mapToDouble(Word::confidence).min().orElse(1);
    return new PeerOutcome(
        new Outcome(text, judge.of(said, words, 1)),
        new Outcome(text, judge.of(said, words, 0)),
        least,
        words.size() == 1);
  }

  /** What comes of it where words are believed of which it is so sure. */
  Outcome with(PeerLimits limits) {
    return confidence >= (isAlone ? limits.leastAlone() : limits.least()) ? sure : doubted;
  }
}
