package org.calamus.core.dialogue;

import java.util.List;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.Amendment;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Entry;
import org.calamus.core.record.FieldId;
import org.calamus.core.speech.Grammar;

/**
 * Everything the dialogue wants done, in the order in which it is to be done. Where one that
 * touches the store fails, nothing behind it in the same step is said or sounded, since that would
 * call it done.
 */
public sealed interface Effect {

  /**
   * Writes an accepted value to the journal, beginning the record where it is new. Safe on disk
   * when done.
   *
   * @param record the record with the value in it
   * @param field the field
   * @param entry the value
   */
  record JournalValue(CaptureRecord record, FieldId field, Entry entry) implements Effect {}

  /**
   * Writes to the journal that a field was emptied.
   *
   * @param record the record without the value
   * @param field the field
   * @param at when, as the event that caused it
   */
  record JournalErased(CaptureRecord record, FieldId field, java.time.Instant at)
      implements Effect {}

  /**
   * Commits the record as saved; answered by {@link Event.Saved}.
   *
   * @param record the record
   */
  record SaveRecord(CaptureRecord record) implements Effect {}

  /**
   * Commits a record without a bird, which says what became of a band; answered by {@link
   * Event.Saved}. Where the store fails it is held back and committed as soon as that works.
   *
   * @param record the record
   */
  record AccountFor(CaptureRecord record) implements Effect {}

  /**
   * Stores that nets were opened or closed. Safe on disk when done.
   *
   * @param events at least one
   */
  record JournalNets(List<NetEvent> events) implements Effect {
    /** Copies the list. */
    public JournalNets {
      events = List.copyOf(events);
    }
  }

  /**
   * Reads a record as it was saved last; answered by {@link Event.SavedRead} or {@link
   * Event.ReadFailed}.
   *
   * @param id the store's number for the record
   */
  record ReadSaved(long id) implements Effect {}

  /**
   * Reads a saved record with how its values came in and what corrections changed, to be looked at;
   * answered by {@link Event.TrailRead} or {@link Event.ReadFailed}.
   *
   * @param id the store's number for the record
   */
  record ReadTrail(long id) implements Effect {}

  /**
   * Commits the correction of a saved record; answered by {@link Event.Amended}.
   *
   * @param record the record as it shall be
   * @param why why, and by whom
   * @param accounts records without a bird, of bands that the correction left over
   */
  record AmendRecord(CaptureRecord record, Amendment.Why why, List<CaptureRecord> accounts)
      implements Effect {
    /** Copies the list. */
    public AmendRecord {
      accounts = List.copyOf(accounts);
    }
  }

  /**
   * Gives up the correction of a saved record, which stays as it was; its journal stays.
   *
   * @param id the store's number for the record
   * @param at when
   */
  record WithdrawCorrection(long id, java.time.Instant at) implements Effect {}

  /**
   * Marks an unfinished record as abandoned; its journal stays.
   *
   * @param record the record
   * @param at when
   */
  record AbandonRecord(CaptureRecord record, java.time.Instant at) implements Effect {}

  /**
   * Speaks a short phrase; the ears are shut meanwhile.
   *
   * @param phrase words only, numbers already digit by digit
   */
  record Say(String phrase) implements Effect {}

  /** Cuts the voice off and opens the ears at once. */
  record Hush() implements Effect {}

  /**
   * Sounds a short soft tone.
   *
   * @param tone which
   */
  record Sound(Tone tone) implements Effect {}

  /**
   * Tells the ears what to listen for from the next utterance on.
   *
   * @param grammar the grammar
   */
  record ListenFor(Grammar grammar) implements Effect {}

  /** Shuts the ears until they are opened again: what is said is for somebody else. */
  record ShutEars() implements Effect {}

  /** Opens the ears at once, or behind what the voice is saying. */
  record OpenEars() implements Effect {}

  /** Ends the utterance that is being spoken now, without waiting for silence. */
  record FinishUtterance() implements Effect {}

  /**
   * Takes what is said next down as sound; answered by {@link Event.MemoRecorded} or {@link
   * Event.MemoFailed}. While the voice speaks nothing is taken down.
   *
   * @param name the name of the sound file: the record's number, a hyphen, a number, {@code .wav}
   * @param longest when it ends at the latest
   */
  record RecordMemo(String name, java.time.Duration longest) implements Effect {}

  /** Ends the memo that is being taken down, without waiting for silence. */
  record StopMemo() implements Effect {}

  /** Ends the session. */
  record EndSession() implements Effect {}
}
