package org.calamus.core.hearing;

import java.util.Objects;
import java.util.Optional;

/**
 * What was measured at the microphone, in decibels of full scale (0 to -96).
 *
 * @param noise the place without speech, its loudest tenth left out
 * @param speech the loud parts of speech
 * @param clippedPerMille how many of a thousand samples of speech stood at full scale
 * @param hum the hum of the mains in the noise; empty where there is none to speak of
 */
public record Levels(int noise, int speech, int clippedPerMille, Optional<Hum> hum) {

  /** Checks that something is said of hum. */
  public Levels {
    Objects.requireNonNull(hum);
  }

  /** Levels without a hum. */
  public Levels(int noise, int speech, int clippedPerMille) {
    this(noise, speech, clippedPerMille, Optional.empty());
  }

  /** How far the voice stands above the noise, in decibels. */
  public int aboveNoise() {
    return speech - noise;
  }
}
