package org.calamus.core.hearing;

/**
 * What was measured at the microphone, in decibels of full scale (0 to -96).
 *
 * @param noise the place without speech, its loudest tenth left out
 * @param speech the loud parts of speech
 * @param clippedPerMille how many of a thousand samples of speech stood at full scale
 */
public record Levels(int noise, int speech, int clippedPerMille) {

  /** How far the voice stands above the noise, in decibels. */
  public int aboveNoise() {
    return speech - noise;
  }
}
