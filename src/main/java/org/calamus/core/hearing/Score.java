package org.calamus.core.hearing;

/**
 * How the self-test went.
 *
 * @param asked how many things were asked, at least 1
 * @param heard of how many any word was heard, whatever it was
 * @param right how many were heard rightly, repeats included
 */
public record Score(int asked, int heard, int right) {

  /** Checks the counts. */
  public Score {
    if (asked < 1 || right < 0 || heard < right || asked < heard) {
      throw new IllegalArgumentException(right + " right, " + heard + " heard, " + asked);
    }
  }

  /** Whether nothing at all was heard. */
  public boolean isNothing() {
    return heard == 0;
  }
}
