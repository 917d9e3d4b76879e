package org.calamus.core.rule;

import java.math.BigDecimal;
import java.math.MathContext;
import org.calamus.core.form.Range;

/**
 * Whether two measures of a bird fit each other, as seen from the middle values of its species:
 * each may pass alone, and the pair betray that one of them is wrong.
 *
 * @param wing the species' middle wing chord in millimetres, above 0
 * @param tail its middle tail in millimetres, above 0
 * @param mass its middle mass in grams, above 0
 */
public record BodyProportion(BigDecimal wing, BigDecimal tail, BigDecimal mass) {

  /**
   * How far mass divided by the cube of the wing may be from the species' own. Derived: a bird of
   * the species may have from 0.75 to 1.5 of the middle mass, and its wing may be 6 % off, which is
   * 1.2 in the cube; 0.75 / 1.2 and 1.5 * 1.2, rounded outwards. The same as limits of a log-ratio.
   */
  private static final Range MASS_FACTOR = new Range(new BigDecimal("0.6"), new BigDecimal("1.85"));

  /** How far tail divided by wing may be. Derived: tail 15 % and wing 6 % off, rounded outwards. */
  private static final Range TAIL_FACTOR = new Range(new BigDecimal("0.8"), new BigDecimal("1.25"));

  /** Enough places that none of the limits, of three, can be missed by rounding. */
  private static final MathContext EXACT_ENOUGH = MathContext.DECIMAL64;

  /** Checks that nothing is divided by zero. */
  public BodyProportion {
    if (wing.signum() <= 0 || tail.signum() <= 0 || mass.signum() <= 0) {
      throw new IllegalArgumentException("middle values must be above zero");
    }
  }

  /** Mass over wing cubed, as a part of the species' own: 1 in a bird of middle build. */
  public BigDecimal massFactor(BigDecimal birdMass, BigDecimal birdWing) {
    return birdMass.multiply(wing.pow(3)).divide(mass.multiply(birdWing.pow(3)), EXACT_ENOUGH);
  }

  /** Tail over wing, as a part of the species' own. */
  public BigDecimal tailFactor(BigDecimal birdTail, BigDecimal birdWing) {
    return birdTail.multiply(wing).divide(tail.multiply(birdWing), EXACT_ENOUGH);
  }

  /** Whether a mass goes with a wing, both in their units and above 0. */
  public boolean massFits(BigDecimal birdMass, BigDecimal birdWing) {
    return MASS_FACTOR.holds(massFactor(birdMass, birdWing));
  }

  /** Whether a tail goes with a wing, both in millimetres and above 0. */
  public boolean tailFits(BigDecimal birdTail, BigDecimal birdWing) {
    return TAIL_FACTOR.holds(tailFactor(birdTail, birdWing));
  }
}
