package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.form.Form;
import org.calamus.core.form.Release;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.record.Spoken;

/** The part of the dialogue that finishes a record. */
final class Saving {

  /**
   * A bird that something is wrong with: sick, exhausted, injured, crippled or deformed, metal band
   * only (Bird Banding Laboratory, "Status and Additional Information Codes").
   */
  private static final String UNWELL = "500";

  /** Not banded, released (MAPS Manual, second-hand). */
  private static final String NOT_BANDED = "000";

  /** Shown from the order to save until the store has answered. */
  static final String SAVING = "Saving.";

  private final Setup setup;
  private final Form form;

  Saving(Setup setup) {
    this.setup = setup;
    this.form = setup.form();
  }

  /** Saves the record in the hand, or says what is missing and asks for the first of it. */
  Step save(State state, List<String> told, Instant at) {
    CaptureRecord record = state.record().orElseThrow();
    List<FieldSpec> missing = form.missing(record);
    if (missing.isEmpty() && state.isCorrecting()) {
      return new Amending(setup).save(state, told, at);
    }
    return missing.isEmpty()
        ? Step.of(state.message(SAVING)).then(new Effect.SaveRecord(completed(state, record, at)))
        : missing(state, missing, told);
  }

  /** Whether the bird is gone, so that the record is finished as soon as nothing is missing. */
  static boolean isBirdGone(State state) {
    return !state.isCorrecting()
        && state.record().flatMap(r -> r.entry(FieldId.RELEASE)).isPresent();
  }

  private Step missing(State state, List<FieldSpec> missing, List<String> told) {
    String shown =
        missing.stream().map(FieldSpec::label).collect(Collectors.joining(", ", "Missing: ", "."));
    String spoken = missing.stream().map(FieldSpec::spoken).collect(Collectors.joining(", "));
    List<String> all = new ArrayList<>(told);
    all.add("missing " + spoken);
    return Step.of(state.withOpen(Optional.of(missing.get(0).id())).message(shown))
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(String.join(". ", all));
  }

  /** The record with the usual values of what nothing was said of. */
  private CaptureRecord completed(State state, CaptureRecord record, Instant at) {
    CaptureRecord full = record;
    for (FieldSpec spec : form.fields()) {
      boolean isOpen =
          record.entry(spec.id()).isEmpty() && form.need(record.kind(), spec.id()).isPresent();
      Optional<String> usual = isOpen ? usual(state, record, spec) : Optional.empty();
      if (usual.isPresent()) {
        Entry entry =
            new Entry(
                new FieldValue.Code(usual.get()),
                new Provenance(Provenance.Way.CONCLUDED, why(spec)),
                at,
                List.of());
        full = full.with(spec.id(), entry);
      }
    }
    return full;
  }

  private static String why(FieldSpec spec) {
    return spec.id() == FieldId.SCRIBE ? "who writes" : "usual where nothing is said";
  }

  private Optional<String> usual(State state, CaptureRecord record, FieldSpec spec) {
    boolean isOnPaper = record.entry(FieldId.DATE).isPresent();
    return spec.id() == FieldId.SCRIBE
        ? new Scribe(setup).of(state).filter(initials -> !isOnPaper)
        : spec.usual().map(usual -> usual(record, spec.id(), usual));
  }

  /** What is usual of this bird. */
  private static String usual(CaptureRecord record, FieldId field, String usual) {
    if (field == FieldId.RELEASE) {
      boolean isDead = record.codes(FieldId.DISPOSITION).contains(Release.FOUND_DEAD);
      return isDead ? Release.DIED.name() : usual;
    }
    if (field != FieldId.STATUS) {
      return usual;
    }
    if (record.kind() == CaptureKind.UNBANDED) {
      return NOT_BANDED;
    }
    return record.entry(FieldId.DISPOSITION).isPresent() ? UNWELL : usual;
  }

  /** The store has committed the record: only now it is called saved. */
  Step saved(State state, CaptureRecord record) {
    if (state.record().map(r -> r.id() != record.id()).orElse(true)) {
      boolean isAddition = state.lastSaved().filter(l -> l.id() == record.id()).isPresent();
      State told = state.withAccounted(record);
      return Step.of(isAddition ? told : told.withListed(setup.phrases().line(record)));
    }
    String line = setup.phrases().line(record);
    State after =
        Scribe.after(state, record)
            .withSaved(record, line)
            .withoutRecord(setup.form().first())
            .message("Saved record " + record.id() + ".")
            .face(f -> f.withBig("saved", ""));
    String next = new NextBand(setup).of(after).map(b -> ". next band " + lastThree(b)).orElse("");
    String how = record.code(FieldId.RELEASE).map(this::wayOut).orElse("");
    return Step.of(after).then(new Effect.Sound(Tone.TAKEN)).say(how + "saved" + next);
  }

  /** How the bird went, where that was not the usual way. */
  private String wayOut(String code) {
    if (code.equals(Release.RELEASED.name())) {
      return "";
    }
    FieldSpec spec = setup.form().spec(FieldId.RELEASE);
    return setup.phrases().spoken(spec, new FieldValue.Code(code)) + ". ";
  }

  private static String lastThree(BandNumber band) {
    return Spoken.digits(band.lastDigits());
  }
}
