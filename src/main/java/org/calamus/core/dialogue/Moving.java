package org.calamus.core.dialogue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * The part of the dialogue that goes from field to field. A value in question is not taken along:
 * it is dropped, and that is said, since one that a rule doubts must not be kept unseen.
 */
final class Moving {

  private final Setup setup;
  private final Offers offers;
  private final Taking taking;
  private final Prompts prompts;

  Moving(Setup setup) {
    this.setup = setup;
    this.offers = new Offers(setup);
    this.taking = new Taking(setup);
    this.prompts = new Prompts(setup);
  }

  /** Asks a field now; its value stays until another is taken. */
  Step open(State before, FieldId field) {
    State state = Doubts.goneOn(before);
    if (Values.isOtherQuestion(state)) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    boolean isAsked = Dialogue.askedField(state).map(field::equals).orElse(false);
    if (!isAsked && !state.face().keys().isEmpty()) {
      return prompts.notEntered(state);
    }
    return leave(state, Optional.of(field), isAsked, about(state, field));
  }

  /** Remarks named when the bird is gone are about it: that is shown. */
  private static String about(State state, FieldId field) {
    return field == FieldId.NOTE && Remarks.isForLastSaved(state)
        ? "Remarks for record " + state.lastSaved().orElseThrow().id() + ", the bird saved last."
        : "";
  }

  /** Leaves the field that is asked as it is and asks the next that has no value. */
  Step next(State before) {
    State state = Doubts.goneOn(before);
    Optional<FieldId> from = Dialogue.askedField(state);
    if (Values.isOtherQuestion(state)) {
      return prompts.miss(state, "answer affirm or negative first");
    }
    if (!state.face().keys().isEmpty()) {
      return prompts.notEntered(state);
    }
    if (Doubts.aboutRelease(state).isPresent()) {
      return leave(state, state.open(), false, "");
    }
    CaptureRecord record = taking.current(state, state.console().now());
    Optional<FieldId> next =
        state.isCorrecting() ? Optional.empty() : from.flatMap(f -> setup.form().behind(record, f));
    return leave(from.map(state::withPassed).orElse(state), next, false, "");
  }

  /** Asks the field before the one that is asked, whether it has a value or not. */
  Step previous(State state) {
    CaptureRecord record = taking.current(state, state.console().now());
    List<FieldId> asked = setup.form().asked(record.kind());
    int at = Dialogue.askedField(state).map(asked::indexOf).orElse(asked.size());
    return at == 0
        ? Step.of(state.message("This is the first field.")).say("this is the first field")
        : open(state, asked.get((at < 0 ? asked.size() : at) - 1));
  }

  /** Goes to a field; what was said in one breath with a value in question is offered there. */
  private Step leave(State state, Optional<FieldId> to, boolean isAskedAgain, String message) {
    Instant now = state.console().now();
    Optional<FieldId> dropped =
        state.question().isPresent()
            ? Doubts.aboutRelease(state)
                .map(Question.Keep::field)
                .or(() -> Dialogue.askedField(state))
            : Optional.empty();
    List<Offer> rest = state.question().map(BandQuestions::rest).orElse(List.of());
    Optional<FieldSpec> left =
        dropped.filter(f -> !isAskedAgain || !to.equals(Optional.of(f))).map(setup.form()::spec);
    List<String> told = left.map(spec -> List.of(spec.spoken() + " not taken")).orElse(List.of());
    // where nothing is spoken, or nobody listens, the screen must not be silent about it
    String shown =
        message.isEmpty() ? left.map(spec -> spec.label() + " not taken.").orElse("") : message;
    State moved =
        state
            .withQuestion(Optional.empty())
            .withOpen(to)
            .face(f -> f.withoutBig().withMessage(shown).withKeys("").withMissed(Misses.none()));
    Step step =
        dropped
            .map(f -> TakingBack.withoutConclusions(moved, f, now))
            .orElseGet(() -> Step.of(moved));
    return rest.isEmpty()
        ? step.then(s -> prompts.prompt(s, String.join("", told)))
        : step.then(s -> offers.offer(s, rest, told, now));
  }
}
