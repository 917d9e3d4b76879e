package org.calamus.core.dialogue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;

/**
 * The part of the dialogue that opens a saved record again and gives a correction up. While it is
 * open its values come in like those of a bird in the hand, under the same rules; what is saved
 * does not change before {@link Amending} has the reason.
 */
final class Correcting {

  private final Setup setup;
  private final Prompts prompts;

  Correcting(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
  }

  /** Asks which record: the last one, or one by the last digits of its band. */
  Step ask(State state) {
    Optional<Step> hindered = hindered(state);
    Optional<PastCapture> last = state.known().captures().newestBird();
    if (hindered.isPresent() || last.isEmpty()) {
      return hindered.orElseGet(() -> nothing(state));
    }
    State asked =
        state
            .withQuestion(Optional.of(new Question.Reopen(last.get())))
            .message("")
            .face(f -> f.withoutBig().withKeys(""));
    return Step.of(asked)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say("amend " + spoken(last.get()) + ". affirm, or last digits of the band");
  }

  private static Step nothing(State state) {
    return Step.of(state.message("There is no saved record to correct.")).say("no saved record");
  }

  /** Why no record can be opened now; empty where one can. */
  private Optional<Step> hindered(State state) {
    if (state.isCorrecting()) {
      String name = Correction.name(state.desk().correction().orElseThrow().saved());
      String shown = "The correction of " + name + " is open: save it or give it up first.";
      return Optional.of(look(state, shown, "a correction is open. save it or abandon it first"));
    }
    if (state.record().isPresent()) {
      String shown = "A bird is in the hand: save its record first, then correct the other.";
      return Optional.of(look(state, shown, "bird in hand. save it first"));
    }
    boolean isOther = state.question().filter(q -> !(q instanceof Question.Reopen)).isPresent();
    return isOther
        ? Optional.of(prompts.miss(state, Questions.answers(state.question().get())))
        : Optional.empty();
  }

  private static Step look(State state, String shown, String spoken) {
    return Step.of(state.message(shown)).then(new Effect.Sound(Tone.LOOK_HERE)).say(spoken);
  }

  /** Opens the record of a band by its last digits, the newest where the bird has several. */
  Step ending(State state, String digits) {
    Optional<Step> hindered = hindered(state);
    if (hindered.isPresent()) {
      return hindered.get();
    }
    List<PastCapture> found = state.known().captures().endingIn(digits);
    if (found.size() == 1) {
      return reopen(state, found.get(0).id());
    }
    String said = Spoken.digits(digits);
    return found.isEmpty()
        ? look(
            cleared(state), "No saved band ends in " + digits + ".", "no saved band ends " + said)
        : look(
            cleared(state),
            found.size() + " saved bands end in " + digits + ": give more of its digits.",
            "several bands end " + said + ". more digits");
  }

  private static State cleared(State state) {
    return state.face(f -> f.withKeys(""));
  }

  /**
   * Opens a saved record by its number, where no bird is in the hand.
   *
   * @param id the store's number for the record
   */
  Step reopen(State state, long id) {
    return hindered(state)
        .orElseGet(
            () ->
                Step.of(cleared(state.withQuestion(Optional.empty()).message("")))
                    .then(new Effect.ReadSaved(id)));
  }

  /** The record was read: it is open from now on. */
  Step read(State state, Event.SavedRead read) {
    if (read.record().isEmpty()) {
      String shown = "Record " + read.id() + " is not among the saved ones.";
      return look(state, shown, "no such record");
    }
    if (state.record().isPresent()) {
      return hindered(state).orElseThrow();
    }
    CaptureRecord record = read.record().get();
    State opened = opened(state, record, record, List.of());
    return Step.of(opened)
        .say(
            "correcting "
                + spoken(PastCapture.of(record))
                + dated(state, record)
                + ". which field");
  }

  /** The record could not be read. */
  static Step failed(State state, Event.ReadFailed failed) {
    return look(state, failed.sentence(), "record not read. look at the screen");
  }

  /** A correction that an earlier session left is carried on. */
  Step resume(State state, CaptureRecord record, CaptureRecord saved) {
    Correction correction = Correction.of(saved, state.known());
    List<Change> changes =
        setup.form().fields().stream()
            .map(spec -> spec.id())
            .filter(field -> correction.hasChanged(record, field))
            .map(field -> (Change) new Change.Given(field, saved.entry(field)))
            .toList();
    return prompts.prompt(
        opened(state, record, saved, changes), "correcting " + spoken(PastCapture.of(saved)));
  }

  private State opened(
      State state, CaptureRecord record, CaptureRecord saved, List<Change> changes) {
    return state
        .withRecord(record, changes)
        .withQuestion(Optional.empty())
        .withOpen(Optional.empty())
        .withKnown(state.known().without(saved.id()))
        .desk(d -> d.withCorrection(Correction.of(saved, state.known())))
        .face(f -> f.withoutBig().withKeys(""))
        .message(
            "Correcting "
                + Correction.name(saved)
                + " of "
                + PastCapture.of(saved).day(setup.station().zone())
                + among(captures(state, saved), saved)
                + ": name a field and give it; then save.");
  }

  /** Which of several captures of the bird it is, so that no other is taken for it. */
  private static String among(List<PastCapture> captures, CaptureRecord saved) {
    if (captures.size() < 2) {
      return "";
    }
    boolean isNewest = captures.get(captures.size() - 1).id() == saved.id();
    return (isNewest ? ", the newest of " : ", one of ") + captures.size() + " with this band";
  }

  /** The day of the capture as said, where the bird has several. */
  private String dated(State state, CaptureRecord saved) {
    List<PastCapture> captures = captures(state, saved);
    LocalDate day = PastCapture.of(saved).day(setup.station().zone());
    return captures.size() < 2
        ? ""
        : " of "
            + Spoken.name(day.getMonth().name())
            + " "
            + Spoken.digits(String.valueOf(day.getDayOfMonth()))
            + " "
            + Spoken.digits(String.valueOf(day.getYear()));
  }

  private static List<PastCapture> captures(State state, CaptureRecord saved) {
    return saved.band().map(state.known()::birds).orElse(List.of());
  }

  /** Gives the correction up: the record stays as it was saved. */
  Step giveUp(State state, Instant at) {
    Correction correction = state.desk().correction().orElseThrow();
    State after = closed(state, correction, "Correction given up: ");
    return Step.of(after)
        .then(new Effect.WithdrawCorrection(correction.saved().id(), at))
        .then(s -> prompts.prompt(s, "given up"));
  }

  /** There was nothing to correct. */
  Step unchanged(State state, Instant at) {
    Correction correction = state.desk().correction().orElseThrow();
    State after = closed(state, correction, "Nothing was changed: ");
    return Step.of(after)
        .then(new Effect.WithdrawCorrection(correction.saved().id(), at))
        .then(s -> prompts.prompt(s, "nothing changed"));
  }

  private State closed(State state, Correction correction, String how) {
    String stays = Correction.name(correction.saved()) + " stays as it was saved.";
    return withoutRecord(state.withKnown(correction.known()), setup.form().first())
        .message(how + stays);
  }

  /** Closes the record; what was weighed for the next bird still waits for it. */
  static State withoutRecord(State state, FieldId first) {
    return state
        .withoutRecord(first)
        .console(c -> c.withWaiting(state.console().waiting()))
        .face(Face::withoutBig);
  }

  /** The fields that differ from what was saved, in the form's order. */
  List<FieldId> changed(State state) {
    CaptureRecord record = state.record().orElseThrow();
    Correction correction = state.desk().correction().orElseThrow();
    return setup.form().fields().stream()
        .map(spec -> spec.id())
        .filter(field -> correction.hasChanged(record, field))
        .toList();
  }

  /** What a field held as it was saved, where it holds something else now. */
  static Optional<Entry> was(State state, FieldId field) {
    return state
        .desk()
        .correction()
        .filter(c -> state.record().filter(r -> c.hasChanged(r, field)).isPresent())
        .flatMap(c -> c.saved().entry(field));
  }

  /** The record as it is said: by the last digits of its band, or else by its number. */
  static String spoken(PastCapture capture) {
    return capture
        .band()
        .map(b -> "band " + Spoken.digits(b.lastDigits()))
        .orElseGet(() -> "record " + Spoken.digits(String.valueOf(capture.id())));
  }
}
