package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.form.FieldSpec;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.speech.Heard;

/**
 * The part of the dialogue that knows who writes. Without a bird in the hand the scribe is given
 * for all records to come; with one, for its record, and whoever it names writes on. A record whose
 * form has a place for it gets it at its end.
 */
final class Scribe {

  private final Setup setup;
  private final Prompts prompts;

  Scribe(Setup setup) {
    this.setup = setup;
    this.prompts = new Prompts(setup);
  }

  /**
   * Who writes now: as given in this session, or as the station has it, or as the last record of
   * the day has it, since a session may have been cut off.
   */
  Optional<String> of(State state) {
    if (!setup.form().has(FieldId.SCRIBE)) {
      return Optional.empty();
    }
    return state
        .desk()
        .scribe()
        .or(setup.station()::scribe)
        .or(() -> lastToday(state))
        .filter(initials -> !initials.isBlank());
  }

  private Optional<String> lastToday(State state) {
    return PageContents.known(state)
        .captures()
        .newestBird()
        .filter(
            c ->
                c.caught().begunOn(setup.station().zone()).equals(PageContents.today(setup, state)))
        .filter(c -> c.bander().equals(setup.station().bander()))
        .flatMap((PastCapture c) -> c.code(FieldId.SCRIBE));
  }

  /** Whether values are about the session and not about a bird. */
  static boolean isOfSession(State state, List<Offer> given) {
    return state.record().isEmpty()
        && state.question().isEmpty()
        && given.size() == 1
        && given.get(0).field() == FieldId.SCRIBE
        && given.get(0).heard() instanceof Heard.One;
  }

  /** Somebody writes from now on. */
  Step set(State state, Offer offer) {
    FieldSpec spec = setup.form().spec(FieldId.SCRIBE);
    Heard.One one = (Heard.One) offer.heard();
    String shown = setup.phrases().shown(spec, one.value());
    State after =
        at(state, one.value().text())
            .face(f -> f.withBig(one.value().text(), "= " + spec.label() + " of the session"))
            .message(shown + " writes from now on.");
    return Step.of(after)
        .then(new Effect.Sound(Tone.TAKEN))
        .then(s -> prompts.prompt(s, setup.phrases().spokenWithName(spec, one.value())));
  }

  /** Whether it is the scribe of the session that shall be erased. */
  static boolean isErased(State state, Optional<FieldId> named) {
    return state.record().isEmpty()
        && state.question().isEmpty()
        && named.or(state::open).filter(FieldId.SCRIBE::equals).isPresent();
  }

  /** Nobody writes any more. */
  Step erase(State state) {
    State after = at(state, "").face(Face::withoutBig).message("Nobody writes from now on.");
    return prompts.prompt(after, setup.form().spec(FieldId.SCRIBE).spoken() + " erased");
  }

  private State at(State state, String initials) {
    State set = state.desk(d -> d.withScribe(initials)).face(f -> f.withKeys(""));
    boolean wasAsked = state.open().filter(FieldId.SCRIBE::equals).isPresent();
    return wasAsked ? set.withOpen(Optional.of(setup.form().first())) : set;
  }

  /** Whoever was given for a bird writes on; not who wrote on paper. */
  static State after(State state, CaptureRecord saved) {
    return saved
        .entry(FieldId.SCRIBE)
        .filter(e -> saved.entry(FieldId.DATE).isEmpty())
        .filter(e -> e.provenance().way() != Provenance.Way.CONCLUDED)
        .map(e -> state.desk(d -> d.withScribe(e.value().text())))
        .orElse(state);
  }
}
