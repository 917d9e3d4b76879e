package org.calamus.core.rule;

import java.util.Objects;
import org.calamus.core.record.CaptureRecord;

/**
 * What the station's saved records tell.
 *
 * @param ledger the bands and what became of them
 */
public record Known(BandLedger ledger) {

  /** Checks that every part is there. */
  public Known {
    Objects.requireNonNull(ledger);
  }

  /** What is known once a record was saved, too. */
  public Known with(CaptureRecord saved) {
    return new Known(saved.band().map(ledger::withUsed).orElse(ledger));
  }

  /** Of a station that has no records yet. */
  public static Known nothing() {
    return new Known(BandLedger.empty());
  }
}
