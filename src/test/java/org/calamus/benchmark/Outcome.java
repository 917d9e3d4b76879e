package org.calamus.benchmark;

/**
 * How a listener heard an utterance.
 *
 * @param heard the words that were heard, utterances parted by a bar; empty where there were none
 * @param verdict what came of it
 * @param detail how sure the listener was, for the list of errors; may be empty
 */
record Outcome(String heard, Verdict verdict, String detail) {

  /** Without anything known of how sure the listener was. */
  Outcome(String heard, Verdict verdict) {
    this(heard, verdict, "");
  }
}
