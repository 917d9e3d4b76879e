package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.readback.Phrases;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Spoken;

/** The part of the dialogue that puts an accepted value into the record, and shows and says it. */
final class Taking {

  private final Setup setup;
  private final Phrases phrases;
  private final NextBand nextBand;

  Taking(Setup setup) {
    this.setup = setup;
    this.phrases = setup.phrases();
    this.nextBand = new NextBand(setup);
  }

  /** The record in the hand, or one that would begin now. */
  CaptureRecord current(State state, Instant at) {
    return state
        .record()
        .orElseGet(
            () ->
                new CaptureRecord(
                    state.nextId(),
                    at,
                    setup.station().place(),
                    setup.station().bander(),
                    Map.of()));
  }

  /** Puts an accepted value into the record and its journal, and goes on to the next field. */
  Step take(State state, FieldId field, Entry entry) {
    CaptureRecord before = current(state, entry.at());
    CaptureRecord after = before.with(field, entry);
    boolean wasAsked = state.open().map(field::equals).orElse(true);
    State taken =
        state
            .withChange(after, change(field, before.entry(field), entry))
            .withQuestion(Optional.empty())
            .face(f -> isAside(field, entry) ? f : shown(f, field, entry.value()))
            .face(f -> f.withKeys("").withMissed(f.missed().without(field)));
    if (state.isCorrecting()) {
      return corrected(taken, wanted(entry, after, field), after, field, entry);
    }
    boolean askedIsFilled = state.open().flatMap(after::entry).isPresent();
    State next =
        wasAsked || askedIsFilled || field == FieldId.KIND
            ? taken.withOpen(setup.form().nextEmpty(after, behind(state, field)))
            : taken;
    Optional<FieldId> wanted = wanted(entry, after, field);
    return Step.of(wanted.isPresent() ? next.withOpen(wanted) : next)
        .then(new Effect.JournalValue(after, field, entry))
        .then(new Effect.Sound(Tone.TAKEN));
  }

  /** A record that is corrected was asked for before: what it lacks is not asked again. */
  private static Step corrected(
      State taken, Optional<FieldId> wanted, CaptureRecord after, FieldId field, Entry entry) {
    return Step.of(taken.withOpen(wanted))
        .then(new Effect.JournalValue(after, field, entry))
        .then(new Effect.Sound(Tone.TAKEN));
  }

  /** The evidence that a value just named, such as the skull's score, is asked at once. */
  private Optional<FieldId> wanted(Entry entry, CaptureRecord record, FieldId field) {
    return entry.isConfirmedDoubt()
        ? Optional.empty()
        : setup.rules().evidenceLacking(record, field).stream()
            .filter(f -> isAskedApart(record, f))
            .findFirst();
  }

  /** A remark is best given at the end, and what is measured in its turn is not asked before. */
  private boolean isAskedApart(CaptureRecord record, FieldId field) {
    boolean isInTurn = setup.form().asked(record.kind()).contains(field);
    boolean isMeasured = setup.form().spec(field).kind() instanceof FieldKind.Measured;
    return field != FieldId.NOTE && !(isMeasured && isInTurn);
  }

  /** Behind evidence that was asked at once the asking goes on where it had been. */
  private FieldId behind(State state, FieldId field) {
    return state
        .lastGiven()
        .filter(
            how ->
                state.record().isPresent()
                    && setup.rules().evidenceLacking(state.record().get(), how).contains(field))
        .orElse(field);
  }

  static Change change(FieldId field, Optional<Entry> before, Entry entry) {
    return entry.provenance().way() == Provenance.Way.CONCLUDED
        ? new Change.Concluded(field, before, Conclusions.SOURCE)
        : new Change.Given(field, before);
  }

  /** What the console adds by itself behind a value does not take that value's place. */
  private static boolean isAside(FieldId field, Entry entry) {
    return field == FieldId.BAND_SIZE && entry.provenance().way() == Provenance.Way.CONCLUDED;
  }

  private Face shown(Face face, FieldId field, FieldValue value) {
    return face.withBig(big(setup.form().spec(field), value), label(field, "= ", " taken"))
        .withMessage("")
        .withEchoed(Optional.of(field));
  }

  /** A value in large glyphs has its unit beside it, in the label. */
  static String big(FieldSpec spec, FieldValue value) {
    return Phrases.brief(spec, value).replaceFirst(" (mm|g)$", "");
  }

  String label(FieldId field, String mark, String standing) {
    return mark + setup.form().spec(field).labelWithUnit() + standing;
  }

  /** The value as read back: of the band that was expected its last three digits are enough. */
  List<String> readback(State state, Offer offer, FieldValue value) {
    boolean isSilent =
        offer.field() == FieldId.BAND_SIZE && offer.provenance().way() == Provenance.Way.CONCLUDED;
    if (isSilent) {
      return List.of();
    }
    boolean isExpected = nextBand.of(state).map(value::equals).orElse(false);
    FieldSpec spec = setup.form().spec(offer.field());
    String echo =
        value instanceof BandNumber band && isExpected
            ? spec.spoken() + " " + Spoken.digits(band.lastDigits())
            : phrases.spokenWithName(spec, value);
    return List.of(echo + former(state, spec, value));
  }

  /** What the value takes the place of, so that a wrong field or a wrong correction is heard. */
  private String former(State state, FieldSpec spec, FieldValue value) {
    return state
        .record()
        .flatMap(r -> r.entry(spec.id()))
        .filter(e -> e.provenance().way() != Provenance.Way.CONCLUDED)
        .map(Entry::value)
        .filter(v -> !v.equals(value) && !(v instanceof FieldValue.Note))
        .map(v -> ", was " + brief(spec, v))
        .orElse("");
  }

  /** Of a band the last digits are enough to know it by. */
  private String brief(FieldSpec spec, FieldValue value) {
    return value instanceof BandNumber band
        ? Spoken.digits(band.lastDigits())
        : phrases.spoken(spec, value);
  }

  /** The value that a field holds now, as said behind its name; empty where it holds none. */
  String held(State state, FieldSpec spec) {
    return state
        .record()
        .flatMap(r -> r.value(spec.id()))
        .filter(v -> !(v instanceof FieldValue.Note))
        .map(v -> ", now " + brief(spec, v))
        .orElse("");
  }

  /** Once the species or the gauge says which band the bird takes, it is shown. */
  Step proposed(State state, FieldId field) {
    boolean isOpen =
        state
            .record()
            .filter(r -> r.kind().putsBand() && r.entry(FieldId.BAND).isEmpty())
            .isPresent();
    boolean tells = field == FieldId.SPECIES || field == FieldId.LEG_GAUGE || field == FieldId.SEX;
    String sizes = String.join(", or ", nextBand.sizes(state));
    if (!isOpen || !tells || sizes.isEmpty() || !state.face().message().isEmpty()) {
      return Step.of(state);
    }
    String next = nextBand.of(state).map(b -> "; next " + b.text()).orElse("");
    return Step.of(state.message("Band size " + sizes + next + "."));
  }
}
