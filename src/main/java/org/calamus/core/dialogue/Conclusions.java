package org.calamus.core.dialogue;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.calamus.core.readback.History;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.BandString;
import org.calamus.core.speech.Heard;

/**
 * What the console concludes by itself from a value: that a bird with a known band is a recapture,
 * and the size of a band from its string. Conclusions are offered like any other value, so that the
 * rules look at them and the bander can give another.
 */
final class Conclusions {

  /** The field from which all is concluded. */
  static final FieldId SOURCE = FieldId.BAND;

  private final Setup setup;
  private final History history;

  Conclusions(Setup setup) {
    this.setup = setup;
    this.history = new History(setup.form(), setup.rules().policy().zone());
  }

  /** What must be in the record before the offered value is looked at. */
  List<Offer> before(State state, Offer offer, FieldValue value) {
    boolean isOpenKind =
        !state.isCorrecting()
            && state.record().flatMap(r -> r.entry(FieldId.KIND)).isEmpty()
            && setup.form().has(CaptureKind.RECAPTURE);
    boolean isWhole = offer.heard() instanceof Heard.One && value instanceof BandNumber;
    return offer.field() == FieldId.BAND
            && isOpenKind
            && isWhole
            && captures(state, (BandNumber) value).stream().anyMatch(c -> mayBeBefore(state, c))
        ? List.of(
            concluded(FieldId.KIND, CaptureKind.RECAPTURE.code(), "the band is in the records"))
        : List.of();
  }

  /** Whether a capture was not later than that of the record; all are, unless it has a date. */
  private boolean mayBeBefore(State state, PastCapture capture) {
    ZoneId zone = setup.station().zone();
    return state
        .record()
        .map(CaptureRecord::caught)
        .filter(c -> c.isEnteredLater(zone))
        .map(c -> !capture.caught().isAfter(c, zone))
        .orElse(true);
  }

  /** What follows from the value that was just taken into the record. */
  List<Offer> after(State state, FieldId field) {
    CaptureRecord record = state.record().orElseThrow();
    boolean wantsSize =
        field == FieldId.BAND
            && record.kind().usesBand()
            && setup.form().need(record.kind(), FieldId.BAND_SIZE).isPresent()
            && record.entry(FieldId.BAND_SIZE).isEmpty();
    return wantsSize
        ? record.band().flatMap(state.known().ledger()::stringOf).stream()
            .map(BandString::size)
            .filter(size -> !size.isEmpty())
            .map(size -> concluded(FieldId.BAND_SIZE, size, "the size of its string"))
            .toList()
        : List.of();
  }

  private static Offer concluded(FieldId field, String code, String why) {
    return new Offer(
        field,
        new Heard.One(new FieldValue.Code(code)),
        new Provenance(Provenance.Way.CONCLUDED, why));
  }

  /**
   * The history of the bird whose band was just read, as one sentence; empty where none is known.
   */
  Optional<String> told(State state, FieldId field) {
    boolean isRead =
        state.record().flatMap(r -> r.kind().bandRead()).filter(field::equals).isPresent();
    List<PastCapture> captures = isRead ? captures(state) : List.of();
    return captures.isEmpty() ? Optional.empty() : Optional.of(history.sentence(captures));
  }

  /** The history of the bird in the hand for the screen, newest capture first. */
  List<String> lines(State state) {
    return history.lines(captures(state));
  }

  private static List<PastCapture> captures(State state) {
    return state
        .record()
        .flatMap(r -> r.kind().bandRead().flatMap(r::band))
        .map(band -> captures(state, band))
        .orElse(List.of());
  }

  /** The captures of a bird; what became of a band without one is none. */
  private static List<PastCapture> captures(State state, BandNumber band) {
    return state.known().birds(band);
  }
}
