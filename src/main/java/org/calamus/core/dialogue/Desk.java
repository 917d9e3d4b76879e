package org.calamus.core.dialogue;

import java.util.Objects;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.effort.NetLog;

/**
 * What is in hand besides the bird.
 *
 * @param correction the saved record that is being corrected; empty where none is
 * @param nets when the nets were open
 */
record Desk(Optional<Correction> correction, NetLog nets) {

  Desk {
    Objects.requireNonNull(correction);
    Objects.requireNonNull(nets);
  }

  static Desk of(NetLog nets) {
    return new Desk(Optional.empty(), nets);
  }

  Desk withCorrection(Correction begun) {
    return new Desk(Optional.of(begun), nets);
  }

  Desk withoutCorrection() {
    return new Desk(Optional.empty(), nets);
  }

  Desk with(NetEvent event) {
    return new Desk(correction, nets.with(event));
  }
}
