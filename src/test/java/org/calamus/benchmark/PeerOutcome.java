package org.calamus.benchmark;

import java.util.List;
import org.calamus.core.speech.Utterance;
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
    Utterance heard = Utterance.of(words);
    return new PeerOutcome(
        new Outcome(heard.text(), judge.of(said, words, 1)),
        new Outcome(heard.text(), judge.of(said, words, 0)),
        heard.lowestConfidence(),
        words.size() == 1);
  }

  /** What comes of it where words are believed of which it is so sure. */
  Outcome with(PeerLimits limits) {
    return confidence >= (isAlone ? limits.leastAlone() : limits.least()) ? sure : doubted;
  }
}
