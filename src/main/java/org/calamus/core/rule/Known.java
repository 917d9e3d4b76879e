package org.calamus.core.rule;

import java.util.List;
import java.util.Objects;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * What the station's saved records tell.
 *
 * @param ledger the bands and what became of them
 * @param captures the captures
 */
public record Known(BandLedger ledger, Captures captures) {

  /** Checks that every part is there. */
  public Known {
    Objects.requireNonNull(ledger);
    Objects.requireNonNull(captures);
  }

  /** Of a station that has no records yet. */
  public static Known nothing() {
    return new Known(BandLedger.empty(), Captures.none());
  }

  /** What saved captures tell, in the order in which they were saved. */
  public static Known of(List<PastCapture> saved) {
    return new Known(
        BandLedger.ofUsed(saved.stream().flatMap(c -> c.band().stream()).toList()),
        Captures.of(saved));
  }

  /** What is known once a record was saved, too. */
  public Known with(CaptureRecord saved) {
    return new Known(
        saved.band().map(ledger::withUsed).orElse(ledger), captures.with(PastCapture.of(saved)));
  }

  /** The captures of the bird that wears a band, oldest first; a lost band was on no bird. */
  public List<PastCapture> birds(BandNumber band) {
    return captures.ofBand(band).stream()
        .filter(
            c ->
                c.code(FieldId.KIND)
                    .flatMap(CaptureKind::ofCode)
                    .map(CaptureKind::hasBird)
                    .orElse(true))
        .toList();
  }
}
