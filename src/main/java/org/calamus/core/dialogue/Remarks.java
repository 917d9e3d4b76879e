package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.form.FieldKind;
import org.calamus.core.form.Form;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Heard;

/** Remarks: spoken ones are taken down as sound, since no small vocabulary has their words. */
final class Remarks {

  private static final Duration LONGEST = Duration.ofSeconds(30);
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Form form;
  private final Values values;
  private final Taking taking;

  Remarks(Setup setup, Values values) {
    this.form = setup.form();
    this.values = values;
    this.taking = new Taking(setup);
  }

  /** Whether the field that is asked holds remarks. */
  boolean isAsked(State state) {
    return Dialogue.askedField(state)
        .filter(f -> form.spec(f).kind() instanceof FieldKind.Note)
        .isPresent();
  }

  /** Begins to take down what is said next; an open record is begun where there is none. */
  Step listen(State state, Instant at) {
    CaptureRecord record = about(state, at);
    String name = record.id() + "-" + NAME.format(at) + ".wav";
    return Step.of(
            state
                .console(c -> c.withMemo(Optional.of(name)))
                .message("Taking down remarks: speak; Enter ends, or a pause."))
        .then(new Effect.RecordMemo(name, LONGEST));
  }

  /** Ends what is being taken down. */
  Step stop(State state) {
    return Step.of(state).then(new Effect.StopMemo());
  }

  static boolean isListening(State state) {
    return state.console().memo().isPresent();
  }

  /**
   * The sound is safe: it goes into the record it was spoken for, beside what is written there. A
   * record that was saved meanwhile does not change; the file is kept.
   */
  Step recorded(State state, Event.MemoRecorded memo) {
    State ended = state.console(c -> c.withMemo(Optional.empty()));
    CaptureRecord record = about(ended, memo.at());
    if (isOfLastSaved(ended, memo)) {
      Offer offer = offer(ended.lastSaved().orElseThrow(), memo);
      FieldValue note = ((Heard.One) offer.heard()).value();
      return add(ended, new Entry(note, offer.provenance(), memo.at(), List.of()));
    }
    if (!memo.name().startsWith(record.id() + "-")) {
      return Step.of(
          ended.message("The remarks are in the file " + memo.name() + "; their bird was saved."));
    }
    return values.inPlace(ended, List.of(offer(record, memo)), memo.at());
  }

  /** The bird was let go while the remarks were spoken: they are added to its saved record. */
  private static boolean isOfLastSaved(State state, Event.MemoRecorded memo) {
    return state
        .lastSaved()
        .filter(l -> memo.name().startsWith(l.id() + "-"))
        .filter(l -> state.record().filter(r -> r.id() != l.id()).isPresent())
        .isPresent();
  }

  /** The bird in the hand; where there is none the one saved last, or else a new one. */
  private CaptureRecord about(State state, Instant at) {
    return state.record().or(state::lastSaved).orElseGet(() -> taking.current(state, at));
  }

  private static Offer offer(CaptureRecord record, Event.MemoRecorded memo) {
    String written =
        record
            .value(FieldId.NOTE)
            .map(v -> v instanceof FieldValue.Note note ? note.written() : "")
            .orElse("");
    return new Offer(
        FieldId.NOTE,
        new Heard.One(new FieldValue.Note(written, Optional.of(memo.name()))),
        new Provenance(Provenance.Way.SAID, "memo of " + memo.length().toSeconds() + " seconds"));
  }

  Step failed(State state, Event.MemoFailed memo) {
    State ended = state.console(c -> c.withMemo(Optional.empty())).message(memo.sentence());
    return Step.of(ended).then(new Effect.Sound(Tone.LOOK_HERE)).say("no memo. type the remarks");
  }

  /** Whether remarks given now are about the bird saved last, since there is none in the hand. */
  static boolean isForLastSaved(State state) {
    return state.record().isEmpty() && state.lastSaved().isPresent();
  }

  /** Adds remarks to the record of the bird saved last, which gets a new version. */
  static Step add(State state, Entry note) {
    CaptureRecord remarked = state.lastSaved().orElseThrow().with(FieldId.NOTE, note);
    return Step.of(
            state.withAccounted(remarked).message("Remarks added to record " + remarked.id() + "."))
        .then(new Effect.AccountFor(remarked))
        .then(new Effect.Sound(Tone.TAKEN));
  }
}
