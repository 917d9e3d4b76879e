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
 * @param scribe who writes, as given in this session, a blank for nobody; empty where nothing was
 *     said of it
 */
record Desk(Optional<Correction> correction, NetLog nets, Optional<String> scribe) {

  Desk {
    Objects.requireNonNull(correction);
    Objects.requireNonNull(nets);
    Objects.requireNonNull(scribe);
  }

  static Desk of(NetLog nets) {
    return new Desk(Optional.empty(), nets, Optional.empty());
  }

  Desk withCorrection(Correction begun) {
    return new Desk(Optional.of(begun), nets, scribe);
  }

  Desk withoutCorrection() {
    return new Desk(Optional.empty(), nets, scribe);
  }

  Desk with(NetEvent event) {
    return new Desk(correction, nets.with(event), scribe);
  }

  /** Somebody writes from now on; a blank for nobody. */
  Desk withScribe(String initials) {
    return new Desk(correction, nets, Optional.of(initials));
  }
}
