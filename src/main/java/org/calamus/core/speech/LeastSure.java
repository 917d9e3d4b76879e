package org.calamus.core.speech;

import java.util.Optional;
import org.calamus.core.record.FieldId;

/**
 * How sure a meaning must be, beside what is asked of every utterance: the more the less likely it
 * is where it is said, and the more a wrong one costs. Chosen on the tuning half
 * (docs/benchmarks.md).
 */
final class LeastSure {

  /**
   * Of what is no answer to what is asked: a command, a name, a value of another field. Talk of
   * other things is heard as one of these far more often than a bander says them.
   */
  private static final double NO_ANSWER = Credibility.Limits.usual().leastAlone();

  /**
   * Of the number of a band that was on the bird. Nothing else tells that a digit of it was lost,
   * as the strings do of the station's own.
   */
  private static final double OLD_BAND = 0.85;

  private LeastSure() {}

  /**
   * The least of it.
   *
   * @param meaning what was understood
   * @param open the field that is asked
   * @return 0 to 1; 0 where nothing was understood
   */
  static double of(Meaning meaning, Optional<FieldId> open) {
    if (meaning instanceof Meaning.Unclear || meaning instanceof Meaning.Chatter) {
      return 0;
    }
    if (!(meaning instanceof Meaning.Values values)) {
      return NO_ANSWER;
    }
    boolean isOldBand =
        values.items().stream()
            .anyMatch(i -> i.field().or(() -> open).equals(Optional.of(FieldId.OLD_BAND)));
    return Math.max(isOldBand ? OLD_BAND : 0, isAnswer(values, open) ? 0 : NO_ANSWER);
  }

  /** Whether it begins with a value of what is asked, or corrects the one before. */
  private static boolean isAnswer(Meaning.Values values, Optional<FieldId> open) {
    Optional<FieldId> first = values.items().get(0).field();
    return values.isCorrection() || first.isEmpty() || first.equals(open);
  }
}
