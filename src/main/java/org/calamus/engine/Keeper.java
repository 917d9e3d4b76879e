package org.calamus.engine;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.calamus.core.dialogue.Effect;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.dialogue.Trail;
import org.calamus.port.Clock;
import org.calamus.port.EventSink;
import org.calamus.port.RecordStore;
import org.calamus.port.RecordStore.StoreException;

/**
 * Performs the effects that touch the store. What the store could not journal (a full disk) is held
 * and journalled again, in order, before anything newer and at every tick, so that a value taken
 * while the disk was full is not lost once there is room.
 */
final class Keeper {

  private final Deque<Effect> backlog = new ArrayDeque<>();
  private final RecordStore store;
  private final Clock clock;
  private final EventSink events;
  private boolean hasFailed;

  Keeper(RecordStore store, Clock clock, EventSink events) {
    this.store = store;
    this.clock = clock;
    this.events = events;
  }

  static boolean isForStore(Effect effect) {
    return effect instanceof Effect.JournalValue
        || effect instanceof Effect.JournalErased
        || effect instanceof Effect.SaveRecord
        || effect instanceof Effect.AbandonRecord
        || effect instanceof Effect.AccountFor
        || effect instanceof Effect.JournalNets
        || effect instanceof Effect.ReadSaved
        || effect instanceof Effect.ReadTrail
        || effect instanceof Effect.AmendRecord
        || effect instanceof Effect.WithdrawCorrection;
  }

  /**
   * Performs an effect, after all that is held back. One that fails is told to the dialogue, and
   * held back unless the bander can simply ask for it again, as for saving.
   *
   * @return whether it is done
   */
  boolean keep(Effect effect) {
    try {
      flush();
      perform(effect);
      works();
      return true;
    } catch (StoreException e) {
      hasFailed = true;
      hold(effect);
      events.post(
          isReading(effect) && backlog.isEmpty()
              ? new Event.ReadFailed(clock.now(), e.getMessage())
              : new Event.StoreFailed(clock.now(), e.getMessage()));
      return false;
    }
  }

  /**
   * Holds an effect back, to be performed in its turn; saving and reading are left to be asked for
   * again.
   */
  void hold(Effect effect) {
    boolean isAskedAgain =
        effect instanceof Effect.SaveRecord
            || effect instanceof Effect.AmendRecord
            || isReading(effect);
    if (!isAskedAgain) {
      backlog.add(effect);
    }
  }

  private static boolean isReading(Effect effect) {
    return effect instanceof Effect.ReadSaved || effect instanceof Effect.ReadTrail;
  }

  /** Tries to journal what is held back; stays silent where that fails again. */
  void catchUp() {
    if (backlog.isEmpty()) {
      return;
    }
    try {
      flush();
      works();
    } catch (StoreException stillNoRoom) {
      // the failure was told when it began, and the next tick tries again
      return;
    }
  }

  private void flush() {
    while (!backlog.isEmpty()) {
      perform(backlog.peek());
      backlog.remove();
    }
  }

  private void works() {
    if (hasFailed) {
      hasFailed = false;
      events.post(new Event.PartUp(clock.now(), Part.STORE, "storing again"));
    }
  }

  private void perform(Effect effect) {
    if (effect instanceof Effect.JournalValue value) {
      store.journal(value.record(), value.field(), value.entry());
    } else if (effect instanceof Effect.JournalErased erased) {
      store.journalErased(erased.record(), erased.field(), erased.at());
    } else if (effect instanceof Effect.AbandonRecord abandoned) {
      store.abandon(abandoned.record(), abandoned.at());
    } else if (effect instanceof Effect.AccountFor account) {
      store.save(account.record(), clock.now());
      events.post(new Event.Saved(clock.now(), account.record()));
    } else if (effect instanceof Effect.SaveRecord save) {
      store.save(save.record(), clock.now());
      events.post(new Event.Saved(clock.now(), save.record()));
    } else if (effect instanceof Effect.JournalNets nets) {
      store.journalNets(nets.events());
    } else if (effect instanceof Effect.ReadSaved read) {
      events.post(new Event.SavedRead(clock.now(), read.id(), store.asSaved(read.id())));
    } else if (effect instanceof Effect.ReadTrail read) {
      Optional<Trail> trail =
          store.asSaved(read.id()).map(record -> new Trail(record, store.amendments(read.id())));
      events.post(new Event.TrailRead(clock.now(), read.id(), trail));
    } else if (effect instanceof Effect.AmendRecord amend) {
      store.amend(amend.record(), amend.why(), amend.accounts(), clock.now());
      events.post(new Event.Amended(clock.now(), amend.record(), amend.accounts()));
    } else if (effect instanceof Effect.WithdrawCorrection withdrawn) {
      store.withdraw(withdrawn.id(), withdrawn.at());
    } else {
      throw new AssertionError(effect);
    }
  }
}
