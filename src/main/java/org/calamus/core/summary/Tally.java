package org.calamus.core.summary;

import java.util.Collection;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.PastCapture;

/**
 * How many birds, by what a station counts: those that got their first band here, those that came
 * back, and the others (banded elsewhere, band replaced or added to, let go without a band). A band
 * that was lost or destroyed is no bird. Common practice, no published source.
 *
 * @param fresh new bands
 * @param recaptured birds with a band of the station's
 * @param others all other birds
 */
public record Tally(int fresh, int recaptured, int others) {

  /** No bird. */
  public static final Tally NONE = new Tally(0, 0, 0);

  /** The birds of these captures; one that is caught twice counts twice. */
  public static Tally of(Collection<PastCapture> captures) {
    Tally tally = NONE;
    for (PastCapture capture : captures) {
      tally = tally.plus(of(capture.kind()));
    }
    return tally;
  }

  private static Tally of(CaptureKind kind) {
    return switch (kind) {
      case NEW -> new Tally(1, 0, 0);
      case RECAPTURE -> new Tally(0, 1, 0);
      case FOREIGN, REPLACED, ADDED, UNBANDED -> new Tally(0, 0, 1);
      case LOST, DESTROYED -> NONE;
    };
  }

  /** Both together. */
  public Tally plus(Tally other) {
    return new Tally(fresh + other.fresh, recaptured + other.recaptured, others + other.others);
  }

  /** All birds. */
  public int total() {
    return fresh + recaptured + others;
  }
}
