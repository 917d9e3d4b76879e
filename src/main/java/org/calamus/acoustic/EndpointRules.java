package org.calamus.acoustic;

import java.time.Duration;

/**
 * When the recogniser takes an utterance to be over.
 *
 * <p>The model folder is the only place where this can be said, for all recognisers of the model.
 *
 * @param nothingSaid silence after which an utterance without any word ends
 * @param sureEnd silence after words whose end is well matched
 * @param likelyEnd silence after words whose end is fairly matched
 * @param anyEnd silence after any words
 * @param longest an utterance ends after this time whatever is said
 */
public record EndpointRules(
    Duration nothingSaid, Duration sureEnd, Duration likelyEnd, Duration anyEnd, Duration longest) {

  /**
   * Nine tenths of a second after a well-matched end: whoever feeds the recogniser finds most ends
   * sooner, by the level, and waits up to 0.8 s in a number that is not whole. The recogniser's
   * usual one and two seconds feel like a missed word. Five seconds for silence and twenty in all
   * are its own defaults.
   */
  public static EndpointRules standard() {
    return new EndpointRules(
        Duration.ofSeconds(5),
        Duration.ofMillis(900),
        Duration.ofMillis(950),
        Duration.ofSeconds(1),
        Duration.ofSeconds(20));
  }
}
