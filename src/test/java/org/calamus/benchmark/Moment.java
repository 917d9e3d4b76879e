package org.calamus.benchmark;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.calamus.core.dialogue.Account;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.Step;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Grammar;
import org.calamus.core.speech.Utterance;

/**
 * A moment of a session: what the dialogue has come to, and all it has said and done until then.
 * What happens next gives another moment; this one stays, so that many things can be tried at it.
 *
 * @param dialogue the dialogue
 * @param state its state
 * @param now the time of the last event
 * @param effects all its effects so far
 */
record Moment(Dialogue dialogue, State state, Instant now, List<Effect> effects) {

  private static final Instant MORNING = Instant.parse("2026-06-13T06:30:00Z");

  /** Copies the list. */
  Moment {
    effects = List.copyOf(effects);
  }

  /** The start of a session. */
  static Moment atStart(Setup setup, Known known) {
    State state = State.atStart(1, setup.form().first(), known);
    return new Moment(new Dialogue(setup), state, MORNING, List.of())
        .after(new Event.Started(MORNING, Optional.empty()));
  }

  /** The moment after something happened; saving and reading what was saved always work. */
  Moment after(Event event) {
    Step step = dialogue.step(state, event);
    List<Effect> all = new ArrayList<>(effects);
    all.addAll(step.effects());
    Moment next = new Moment(dialogue, step.state(), event.at(), all);
    for (Effect effect : step.effects()) {
      if (effect instanceof Effect.SaveRecord save) {
        next = next.after(new Event.Saved(event.at(), save.record()));
      } else if (effect instanceof Effect.ReadSaved read) {
        next = next.after(new Event.SavedRead(event.at(), read.id(), next.saved(read.id())));
      } else if (effect instanceof Effect.AmendRecord amend) {
        next = next.after(new Event.Amended(event.at(), amend.record(), amend.accounts()));
      }
    }
    return next;
  }

  /** A record as it was saved; corrections of it are not counted in. */
  private Optional<CaptureRecord> saved(long id) {
    return effects.stream()
        .filter(Effect.SaveRecord.class::isInstance)
        .map(e -> ((Effect.SaveRecord) e).record())
        .filter(r -> r.id() == id)
        .findFirst();
  }

  /** The moment after something was heard. */
  Moment hears(Utterance utterance) {
    Instant later = now.plusSeconds(2);
    return after(new Event.Heard(later, utterance, later));
  }

  /** The moment after something was said and every word of it heard for sure. */
  Moment says(String words) {
    return hears(Utterance.of(words));
  }

  /** The way to hear an utterance that makes sense now. */
  Utterance heardAs(Utterance utterance) {
    Event.Heard heard = new Event.Heard(now, utterance, now);
    Account account = dialogue.accounts().of(state, heard, dialogue.step(state, heard));
    return dialogue.accounts().heardAs(account.met(), now, utterance);
  }

  /** What is listened for. */
  Grammar grammar() {
    return effects.stream()
        .filter(Effect.ListenFor.class::isInstance)
        .map(e -> ((Effect.ListenFor) e).grammar())
        .reduce((first, second) -> second)
        .orElseThrow();
  }

  /** The last phrase that was spoken since an earlier moment; empty where there was none. */
  String replySince(Moment earlier) {
    return effects.subList(earlier.effects.size(), effects.size()).stream()
        .filter(Effect.Say.class::isInstance)
        .map(e -> ((Effect.Say) e).phrase())
        .reduce((first, second) -> second)
        .orElse("");
  }

  /** All that stays: values, records, reasons of corrections, the end. */
  String kept() {
    StringBuilder kept = new StringBuilder();
    for (FieldId field : FieldId.values()) {
      String value = state.record().flatMap(r -> r.value(field)).map(v -> v.text()).orElse("-");
      kept.append(value).append(' ');
    }
    effects.stream()
        .filter(Effect.AmendRecord.class::isInstance)
        .forEach(e -> kept.append(((Effect.AmendRecord) e).why().reason()).append(' '));
    boolean ends = effects.stream().anyMatch(Effect.EndSession.class::isInstance);
    return kept.append(state.savedCount()).append(ends).toString();
  }
}
