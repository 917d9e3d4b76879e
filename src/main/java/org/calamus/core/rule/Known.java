package org.calamus.core.rule;

import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Captures;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * What the station's saved records tell.
 *
 * @param ledger the bands and what became of them
 * @param captures the captures
 * @param sample their measures, those that were doubted left out
 */
public record Known(BandLedger ledger, Captures captures, StationSample sample) {

  /** Checks that every part is there. */
  public Known {
    Objects.requireNonNull(ledger);
    Objects.requireNonNull(captures);
    Objects.requireNonNull(sample);
  }

  /** Bands and captures, without a sample of measures. */
  public Known(BandLedger ledger, Captures captures) {
    this(ledger, captures, StationSample.empty());
  }

  /** Of a station that has no records yet and declared no strings. */
  public static Known nothing() {
    return new Known(BandLedger.empty(), Captures.none());
  }

  /**
   * What saved captures tell.
   *
   * @param issued the strings issued to the station; none where it declared none
   * @param saved the captures in the order in which they were saved
   * @param zone the station's zone
   */
  public static Known of(List<BandString> issued, List<PastCapture> saved, ZoneId zone) {
    BandLedger ledger = BandLedger.of(issued);
    for (PastCapture capture : saved) {
      ledger = booked(ledger, capture);
    }
    return new Known(ledger, Captures.of(saved, zone), StationSample.of(saved));
  }

  /** What is known once a record was saved, too; saving it again changes no band's fate. */
  public Known with(CaptureRecord saved) {
    PastCapture capture = PastCapture.of(saved);
    StationSample others = captures.ofRecord(capture.id()).map(sample::without).orElse(sample);
    return new Known(booked(ledger, capture), captures.with(capture), others.with(capture));
  }

  /**
   * What the others tell while a record is corrected: its own band is free for it, and that a band
   * was read later says nothing of whether it could be put on then.
   */
  public Known without(long recordId) {
    Optional<PastCapture> gone = captures.ofRecord(recordId);
    if (gone.isEmpty()) {
      return this;
    }
    Captures others = captures.without(recordId);
    List<PastCapture> telling =
        others.all().stream().filter(c -> c.id() < recordId || hasFate(c)).toList();
    return new Known(booked(telling), others, sample.without(gone.get()));
  }

  /** Whether a capture tells what became of a band, and not only that it was read. */
  static boolean hasFate(PastCapture capture) {
    return capture.kind().putsBand() || !capture.kind().hasBird();
  }

  /**
   * What is known once a saved record was corrected, as if it had been right from the beginning: a
   * band that it no longer has is on its string again, unless another record tells of it.
   */
  public Known corrected(CaptureRecord record) {
    PastCapture capture = PastCapture.of(record);
    Captures all = captures.with(capture);
    StationSample others = captures.ofRecord(capture.id()).map(sample::without).orElse(sample);
    return new Known(booked(all.all()), all, others.with(capture));
  }

  /** The ledger of the same strings after captures, in the order of their records. */
  private BandLedger booked(List<PastCapture> inOrder) {
    BandLedger anew = BandLedger.of(ledger.strings());
    for (PastCapture capture : inOrder) {
      anew = booked(anew, capture);
    }
    return anew;
  }

  /** The ledger after a capture: a band that was only read says nothing of which is next. */
  private static BandLedger booked(BandLedger before, PastCapture capture) {
    BandLedger ledger =
        capture
            .value(FieldId.OLD_BAND)
            .map(v -> v instanceof BandNumber old ? before.withSeen(old) : before)
            .orElse(before);
    Optional<BandNumber> band = capture.band();
    if (band.isEmpty()) {
      return ledger;
    }
    return switch (capture.kind()) {
      case NEW, REPLACED, ADDED -> ledger.withUsed(band.get());
      case LOST -> ledger.withFate(band.get(), BandFate.LOST);
      case DESTROYED -> ledger.withFate(band.get(), BandFate.DESTROYED);
      default -> ledger.withSeen(band.get());
    };
  }

  /** The captures of the bird that wears a band, oldest first; a lost band was on no bird. */
  public List<PastCapture> birds(BandNumber band) {
    return captures.ofBand(band).stream().filter(c -> c.kind().hasBird()).toList();
  }

  /** Whether the records have a bird that wears or wore the band. */
  boolean isOnBird(BandNumber band) {
    return ledger.fateOf(band).filter(BandFate.USED::equals).isPresent() || !birds(band).isEmpty();
  }
}
