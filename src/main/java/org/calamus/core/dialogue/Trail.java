package org.calamus.core.dialogue;

import java.util.List;
import java.util.Objects;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;

/**
 * What a saved record has gone through, for the page that shows it whole.
 *
 * @param record the record as it was saved or corrected last, with how its values came in
 * @param amendments what corrections changed in it, oldest first; none where it was never corrected
 */
public record Trail(CaptureRecord record, List<Amendment> amendments) {

  /** Copies the list. */
  public Trail {
    Objects.requireNonNull(record);
    amendments = List.copyOf(amendments);
  }
}
