package org.calamus.core.dialogue;

import java.util.Optional;

/**
 * What is in hand besides the bird.
 *
 * @param correction the saved record that is being corrected; empty where none is
 */
record Desk(Optional<Correction> correction) {

  static Desk empty() {
    return new Desk(Optional.empty());
  }

  Desk withCorrection(Correction begun) {
    return new Desk(Optional.of(begun));
  }

  Desk withoutCorrection() {
    return new Desk(Optional.empty());
  }
}
