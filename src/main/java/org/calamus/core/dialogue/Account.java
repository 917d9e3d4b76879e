package org.calamus.core.dialogue;

import java.util.Objects;
import java.util.Set;
import org.calamus.core.speech.Credibility;

/**
 * What happened to an utterance, from its words to the answer.
 *
 * @param met what it met
 * @param signs what spoke against believing it
 * @param understood what its words were understood as
 * @param outcome what became of it
 */
public record Account(
    Circumstances met, Set<Credibility.Sign> signs, Understood understood, Outcome outcome) {

  /** Copies the set. */
  public Account {
    Objects.requireNonNull(met);
    Objects.requireNonNull(understood);
    Objects.requireNonNull(outcome);
    signs = Set.copyOf(signs);
  }
}
