package org.calamus.benchmark;

/**
 * How a listener heard an utterance.
 *
 * @param heard the words that were heard, utterances parted by a bar; empty where there were none
 * @param verdict what came of it
 */
record Outcome(String heard, Verdict verdict) {}
