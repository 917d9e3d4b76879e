package org.calamus.benchmark;

import java.util.Optional;

/**
 * An utterance and how it was heard.
 *
 * @param speaker who said it
 * @param condition how it reached the microphone
 * @param said what was said
 * @param seconds how long its recording is
 * @param ours how the program's ears heard it
 * @param peer how the peer heard it; empty where it did not listen
 */
record Trial(
    Speaker speaker,
    Condition condition,
    Said said,
    double seconds,
    Outcome ours,
    Optional<PeerOutcome> peer) {

  /** The same, heard by the peer as well. */
  Trial with(PeerOutcome heardByPeer) {
    return new Trial(speaker, condition, said, seconds, ours, Optional.of(heardByPeer));
  }
}
