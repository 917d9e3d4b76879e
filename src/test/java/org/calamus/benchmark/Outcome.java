package org.calamus.benchmark;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.calamus.core.speech.Utterance;

/**
 * How a listener heard an utterance.
 *
 * @param heard the words that were heard, utterances parted by a bar; empty where there were none
 * @param verdict what came of it
 * @param utterances what was heard with all that is known of it; empty where no more than the words
 *     is known
 */
record Outcome(String heard, Verdict verdict, List<Utterance> utterances) {

  /** Copies the list. */
  Outcome {
    utterances = List.copyOf(utterances);
  }

  /** Without anything known of how sure the listener was. */
  Outcome(String heard, Verdict verdict) {
    this(heard, verdict, List.of());
  }

  /** What was heard by our own ears. */
  static Outcome of(List<Utterance> utterances, Verdict verdict) {
    String text = utterances.stream().map(Utterance::text).collect(Collectors.joining(" | "));
    return new Outcome(text, verdict, utterances);
  }

  /** How sure the listener was, for the list of errors; may be empty. */
  String detail() {
    return utterances.stream()
        .map(
            u ->
                String.format(
                    Locale.ROOT,
                    "%.2f sure, %d ms, %d dB above noise",
                    u.lowestConfidence(),
                    u.voiced().toMillis(),
                    u.aboveNoise()))
        .collect(Collectors.joining("; "));
  }
}
