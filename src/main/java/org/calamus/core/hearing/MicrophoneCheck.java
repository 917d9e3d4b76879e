package org.calamus.core.hearing;

import java.time.Instant;
import java.util.Objects;

/**
 * A check of a microphone that was made.
 *
 * @param microphone its name, as the ears give it
 * @param at when the check ended
 * @param grade whether it will do
 * @param sentence the verdict in one sentence
 */
public record MicrophoneCheck(
    String microphone, Instant at, MicrophoneVerdict.Grade grade, String sentence) {

  /** Checks that every part is there. */
  public MicrophoneCheck {
    Objects.requireNonNull(microphone);
    Objects.requireNonNull(at);
    Objects.requireNonNull(grade);
    Objects.requireNonNull(sentence);
  }
}
