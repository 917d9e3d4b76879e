package org.calamus.core.speech;

import java.util.List;
import java.util.Objects;

/**
 * What the recogniser shall listen for now.
 *
 * @param name a short name, for the log and so that an unchanged grammar is not set again
 * @param phrases the phrases in order; one that occurs more than once is the likelier for it, since
 *     the recogniser counts them
 */
public record Grammar(String name, List<String> phrases) {

  /** Copies the list. */
  public Grammar {
    Objects.requireNonNull(name);
    phrases = List.copyOf(phrases);
  }
}
