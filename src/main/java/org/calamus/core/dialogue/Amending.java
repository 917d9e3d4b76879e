package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Spoken;
import org.calamus.core.rule.Known;

/**
 * The part of the dialogue that saves a correction: it asks why, since what is changed without a
 * reason cannot be judged later, and calls it saved when the store has it.
 */
final class Amending {

  private static final Duration LONGEST = Duration.ofSeconds(30);

  /** Another form than that of remarks, so that the two are never taken for each other. */
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("'9'HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Setup setup;
  private final Correcting correcting;
  private final Prompts prompts;

  Amending(Setup setup) {
    this.setup = setup;
    this.correcting = new Correcting(setup);
    this.prompts = new Prompts(setup);
  }

  /** Asks for the reason; where nothing was changed the record is closed instead. */
  Step save(State state, List<String> told, Instant at) {
    if (correcting.changed(state).isEmpty()) {
      return correcting.unchanged(state, at);
    }
    State asked =
        state
            .withQuestion(Optional.of(new Question.Reason()))
            .message("")
            .face(f -> f.withoutBig().withKeys(""));
    return Step.of(asked)
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say(Prompts.joined(told, "say the reason, or its number"));
  }

  /** The reason was given: the correction is committed, or the reason is told in a memo first. */
  Step reason(State state, Amendment.Reason reason, Instant at) {
    if (state.question().filter(Question.Reason.class::isInstance).isEmpty()) {
      return prompts.miss(state, "no correction to save");
    }
    return reason == Amendment.Reason.OTHER
        ? listen(state, at)
        : commit(state, reason, Optional.empty());
  }

  private Step listen(State state, Instant at) {
    String name = state.record().orElseThrow().id() + "-" + NAME.format(at) + ".wav";
    return Step.of(
            state
                .desk(
                    d -> d.withCorrection(d.correction().orElseThrow().withMemo(Optional.of(name))))
                .console(c -> c.withMemo(Optional.of(name)))
                .face(f -> f.withKeys(""))
                .message("Taking down the reason: speak; Enter ends, or a pause."))
        .then(new Effect.RecordMemo(name, LONGEST));
  }

  private Step commit(State state, Amendment.Reason reason, Optional<String> memo) {
    CaptureRecord record = state.record().orElseThrow();
    Amendment.Why why = new Amendment.Why(reason, memo, setup.station().bander());
    State saving =
        state
            .withQuestion(Optional.empty())
            .withOpen(Optional.empty())
            .face(f -> f.withKeys(""))
            .message(Saving.SAVING);
    List<CaptureRecord> accounts = state.desk().correction().orElseThrow().accounts();
    return Step.of(saving).then(new Effect.AmendRecord(record, why, accounts));
  }

  /** Whether a memo is the reason that is waited for. */
  static boolean isReason(State state, String memo) {
    // the file may have been named a little otherwise, where there was one of the name
    return isTelling(state)
        && state.record().filter(r -> memo.startsWith(r.id() + "-")).isPresent();
  }

  /** Whether the reason is being told. */
  static boolean isTelling(State state) {
    return state.question().filter(Question.Reason.class::isInstance).isPresent()
        && state.desk().correction().flatMap(Correction::memo).isPresent();
  }

  /** The reason is on disk. */
  Step told(State state, String memo) {
    State ended = state.console(c -> c.withMemo(Optional.empty()));
    return commit(ended, Amendment.Reason.OTHER, Optional.of(memo));
  }

  /** The reason was not taken down: the correction is worth more than its memo. */
  Step untold(State state, String sentence) {
    State ended = state.console(c -> c.withMemo(Optional.empty()));
    Step committed = commit(ended, Amendment.Reason.OTHER, Optional.empty());
    return Step.of(ended.message(sentence))
        .then(new Effect.Sound(Tone.LOOK_HERE))
        .say("no memo")
        .then(s -> committed);
  }

  /** The store has committed the correction: only now it is called saved. */
  Step amended(State state, Event.Amended amended) {
    if (state.desk().correction().isEmpty()) {
      return Step.of(state);
    }
    CaptureRecord record = amended.record();
    CaptureRecord saved = state.desk().correction().get().saved();
    Known known = state.desk().correction().get().known();
    for (CaptureRecord account : amended.accounts()) {
      known = known.with(account);
    }
    Known told = known.corrected(record);
    State listed = state;
    for (CaptureRecord account : amended.accounts()) {
      listed = listed.withListed(setup.phrases().line(account));
    }
    String line = "corrected  " + setup.phrases().line(record);
    State after =
        Correcting.withoutRecord(listed.withCorrected(record, told, line), setup.form().first())
            .message("Correction of " + Correction.name(record) + " saved." + freed(saved, told))
            .face(f -> f.withBig("saved", ""));
    String name = Correcting.spoken(PastCapture.of(record));
    return Step.of(after).then(new Effect.Sound(Tone.TAKEN)).say("correction saved. " + name);
  }

  /** What becomes of the band that the record had before, where that is nothing yet. */
  private static String freed(CaptureRecord saved, Known known) {
    Optional<BandNumber> before = saved.band().filter(b -> saved.kind().usesBand());
    return before
        .filter(b -> known.ledger().fateOf(b).isEmpty())
        .map(b -> " " + b.text() + " is on its string again.")
        .orElse("");
  }

  /** The number of a reason was struck. */
  Step keyed(State state, String keys, Instant at) {
    return Amendment.Reason.ofNumber(keys)
        .map(reason -> reason(state, reason, at))
        .orElseGet(() -> prompts.miss(state.face(f -> f.withKeys("")), answers()));
  }

  /** What answers the question. */
  static String answers() {
    return "say the reason, or strike " + Spoken.digits("1") + " to " + Spoken.digits("6");
  }

  /** The reasons with their numbers. */
  static List<View.Choice> choices() {
    return java.util.Arrays.stream(Amendment.Reason.values())
        .map(r -> new View.Choice(String.valueOf(r.number()), r.words()))
        .toList();
  }
}
