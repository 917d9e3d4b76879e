package org.calamus.support;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.calamus.core.dialogue.Dialogue;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Key;
import org.calamus.core.dialogue.Setup;
import org.calamus.core.dialogue.State;
import org.calamus.core.dialogue.Step;
import org.calamus.core.dialogue.Trail;
import org.calamus.core.dialogue.View;
import org.calamus.core.dialogue.Views;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.Reading;
import org.calamus.core.record.Unit;
import org.calamus.core.rule.Known;
import org.calamus.core.speech.Utterance;

/** A session of the dialogue alone: events in, effects collected, saving always works. */
public final class Talk {

  private final Setup setup;
  private final Dialogue dialogue;
  private State state;
  private Instant now = Instant.parse("2026-06-13T06:30:00Z");
  private final List<Effect> effects = new ArrayList<>();
  private final Map<Long, CaptureRecord> saved = new HashMap<>();
  private final Map<Long, List<Amendment>> amendments = new HashMap<>();

  /** A session that begins with the given setup and bands used. */
  public Talk(Setup setup, Known known) {
    this.setup = setup;
    this.dialogue = new Dialogue(setup);
    this.state = State.atStart(1, setup.form().first(), known);
  }

  /** A started session at Fenwick Marsh with nothing saved yet. */
  public static Talk atFenwick() {
    Talk talk = new Talk(Fenwick.setup(), Known.nothing());
    return talk.event(new Event.Started(talk.now, Optional.empty()));
  }

  /** Lets something happen. */
  public Talk event(Event event) {
    now = event.at();
    Step step = dialogue.step(state, event);
    state = step.state();
    effects.addAll(step.effects());
    for (Effect effect : step.effects()) {
      if (effect instanceof Effect.SaveRecord save) {
        saved.put(save.record().id(), save.record());
        event(new Event.Saved(now, save.record()));
      } else if (effect instanceof Effect.AccountFor account) {
        saved.put(account.record().id(), account.record());
        event(new Event.Saved(now, account.record()));
      } else if (effect instanceof Effect.AmendRecord amend) {
        amend.accounts().forEach(a -> saved.put(a.id(), a));
        amendments
            .computeIfAbsent(amend.record().id(), id -> new ArrayList<>())
            .addAll(changes(Optional.ofNullable(saved.get(amend.record().id())), amend));
        saved.put(amend.record().id(), amend.record());
        event(new Event.Amended(now, amend.record(), amend.accounts()));
      } else if (effect instanceof Effect.ReadSaved read) {
        event(new Event.SavedRead(now, read.id(), Optional.ofNullable(saved.get(read.id()))));
      } else if (effect instanceof Effect.ReadTrail read) {
        List<Amendment> changed = amendments.getOrDefault(read.id(), List.of());
        Optional<Trail> trail =
            Optional.ofNullable(saved.get(read.id())).map(r -> new Trail(r, changed));
        event(new Event.TrailRead(now, read.id(), trail));
      }
    }
    return this;
  }

  /** What a correction changed; nothing is known of a record that an earlier session saved. */
  private List<Amendment> changes(Optional<CaptureRecord> saved, Effect.AmendRecord amend) {
    return saved.map(before -> changes(before, amend)).orElse(List.of());
  }

  private List<Amendment> changes(CaptureRecord before, Effect.AmendRecord amend) {
    if (before == null) {
      // saved in a session before this one: what it held is not known here
      return List.of();
    }
    return Stream.of(FieldId.values())
        .filter(f -> !before.entry(f).equals(amend.record().entry(f)))
        .map(
            f ->
                new Amendment(
                    before.id(), f, before.entry(f), amend.record().entry(f), amend.why(), now))
        .toList();
  }

  /** Has the balance of Fenwick Marsh send stable weights in grams, five a second. */
  public Talk weigh(String... amounts) {
    return weighAt(Fenwick.balance().name(), amounts);
  }

  /** Has a balance at a port send stable weights in grams, five a second. */
  public Talk weighAt(String port, String... amounts) {
    for (String amount : amounts) {
      Reading reading =
          new Reading(
              new BigDecimal(amount), Unit.GRAM, Reading.Stability.STABLE, "ST," + amount + " g");
      event(new Event.ReadingArrived(now.plusMillis(200), port, Fenwick.balance().name(), reading));
    }
    return this;
  }

  /** Says some words. */
  public Talk say(String words) {
    now = now.plusSeconds(2);
    return event(new Event.Heard(now, Utterance.of(words), now));
  }

  /** Strikes keys; a newline is Enter. */
  public Talk keys(String keys) {
    for (char c : keys.toCharArray()) {
      now = now.plusMillis(200);
      event(new Event.KeyStruck(now, c == '\n' ? Key.of(Key.Name.ENTER) : Key.of(c)));
    }
    return this;
  }

  /** The phrases spoken so far; forgets them and all other effects. */
  public List<String> spoken() {
    List<String> phrases =
        effects.stream()
            .filter(Effect.Say.class::isInstance)
            .map(e -> ((Effect.Say) e).phrase())
            .toList();
    effects.clear();
    return phrases;
  }

  /** The last phrase spoken; forgets all effects so far. */
  public String lastSpoken() {
    List<String> phrases = spoken();
    return phrases.isEmpty() ? "" : phrases.get(phrases.size() - 1);
  }

  /** The effects so far. */
  public List<Effect> effects() {
    return List.copyOf(effects);
  }

  /** The record in the hand. */
  public Optional<CaptureRecord> record() {
    return state.record();
  }

  /** A field of the record in the hand as text; a dash where it is empty. */
  public String field(FieldId field) {
    return state.record().flatMap(r -> r.value(field)).map(v -> v.text()).orElse("-");
  }

  /** A record as it was saved or corrected last. */
  public CaptureRecord asSaved(long id) {
    return Optional.ofNullable(saved.get(id)).orElseThrow();
  }

  /** The records saved in this session. */
  public int saved() {
    return state.savedCount();
  }

  /** What the screen shows. */
  public View view() {
    return new Views(setup).of(state);
  }

  /** The time of the last event. */
  public Instant now() {
    return now;
  }

  /** The state itself. */
  public State state() {
    return state;
  }
}
