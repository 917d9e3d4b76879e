package org.calamus.benchmark;

/**
 * An utterance that was heard.
 *
 * @param speaker who said it
 * @param condition how it reached the microphone
 * @param said what was said
 * @param seconds how long its recording is
 * @param heard the words that were heard, utterances parted by a bar; empty where there were none
 * @param verdict what came of it
 */
record Trial(
    Speaker speaker,
    Condition condition,
    Said said,
    double seconds,
    String heard,
    Verdict verdict) {}
