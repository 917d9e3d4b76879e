package org.calamus.core.dialogue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Reading;
import org.calamus.core.speech.Utterance;

/** Everything that can happen to a session, each with the time at which it did (UTC). */
public sealed interface Event {

  /** When it happened. */
  Instant at();

  /**
   * The session begins.
   *
   * @param at when
   * @param unfinished a record that an earlier session left unfinished
   * @param saved the same record as it was saved, where a correction of it was left unfinished
   */
  record Started(Instant at, Optional<CaptureRecord> unfinished, Optional<CaptureRecord> saved)
      implements Event {

    /** The session begins, and no correction was left. */
    public Started(Instant at, Optional<CaptureRecord> unfinished) {
      this(at, unfinished, Optional.empty());
    }
  }

  /**
   * Somebody spoke and fell silent.
   *
   * @param at when the result was ready
   * @param utterance what was heard
   * @param speechEndedAt when the last sound of it reached the console
   */
  record Heard(Instant at, Utterance utterance, Instant speechEndedAt) implements Event {

    /** The same, heard in another way. */
    Heard as(Utterance other) {
      return new Heard(at, other, speechEndedAt);
    }
  }

  /**
   * The level at the microphone, a few times a second.
   *
   * @param at when
   * @param decibels peak since the last one, in decibels below full scale, 0 to -96
   * @param isSpeech whether the ears take it for speech
   */
  record LevelMeasured(Instant at, int decibels, boolean isSpeech) implements Event {}

  /**
   * A key was struck.
   *
   * @param at when
   * @param key the key
   */
  record KeyStruck(Instant at, Key key) implements Event {}

  /**
   * An instrument sent a reading.
   *
   * @param at when
   * @param port which of several instruments: the path of its port, or the name of what stands for
   *     it where it has none
   * @param device the name of the device description
   * @param reading what it sent
   */
  record ReadingArrived(Instant at, String port, String device, Reading reading) implements Event {}

  /**
   * A part of the console works, or works again.
   *
   * @param at when
   * @param part which
   * @param name the device or file, for the screen
   * @param port which of several instruments it is, as in {@link ReadingArrived}; empty where there
   *     is one of the part only
   */
  record PartUp(Instant at, Part part, String name, Optional<String> port) implements Event {

    /** A part works of which there is only one. */
    public PartUp(Instant at, Part part, String name) {
      this(at, part, name, Optional.empty());
    }
  }

  /**
   * A part of the console does not work. The rest goes on.
   *
   * @param at when
   * @param part which
   * @param sentence one sentence: what is wrong and what to do next
   * @param port which of several instruments it is, as in {@link ReadingArrived}; empty where there
   *     is one of the part only
   */
  record PartDown(Instant at, Part part, String sentence, Optional<String> port) implements Event {

    /** A part does not work of which there is only one. */
    public PartDown(Instant at, Part part, String sentence) {
      this(at, part, sentence, Optional.empty());
    }
  }

  /**
   * The voice began to speak.
   *
   * @param at when the first sound went out
   */
  record VoiceBegan(Instant at) implements Event {}

  /**
   * The voice fell silent: it had said all, or was cut off.
   *
   * @param at when
   */
  record VoiceEnded(Instant at) implements Event {}

  /**
   * A record is safe: the store has committed it.
   *
   * @param at when
   * @param record the record as stored
   */
  record Saved(Instant at, CaptureRecord record) implements Event {}

  /**
   * A saved record was read, to be corrected.
   *
   * @param at when
   * @param id its number
   * @param record the record as it was saved last; empty where the store has none
   */
  record SavedRead(Instant at, long id, Optional<CaptureRecord> record) implements Event {}

  /**
   * A saved record was read, to be looked at.
   *
   * @param at when
   * @param id its number
   * @param trail the record as it was saved last, with its corrections; empty where the store has
   *     none
   */
  record TrailRead(Instant at, long id, Optional<Trail> trail) implements Event {}

  /**
   * A saved record could not be read.
   *
   * @param at when
   * @param sentence one sentence: what is wrong and what to do next
   */
  record ReadFailed(Instant at, String sentence) implements Event {}

  /**
   * The correction of a saved record is safe: the store has committed it.
   *
   * @param at when
   * @param record the record as it is now
   * @param accounts what it said of other bands
   */
  record Amended(Instant at, CaptureRecord record, List<CaptureRecord> accounts) implements Event {
    /** Copies the list. */
    public Amended {
      accounts = List.copyOf(accounts);
    }
  }

  /**
   * The store could not do what it was asked; what it held before is untouched.
   *
   * @param at when
   * @param sentence one sentence: what is wrong and what to do next
   */
  record StoreFailed(Instant at, String sentence) implements Event {}

  /**
   * A memo is safe on disk.
   *
   * @param at when
   * @param name the name of the sound file: the one asked for, or one like it where that was taken
   * @param length how long it is
   */
  record MemoRecorded(Instant at, String name, Duration length) implements Event {}

  /**
   * A memo that was asked for was not taken down, or not kept.
   *
   * @param at when
   * @param sentence one sentence: what is wrong and what to do next
   */
  record MemoFailed(Instant at, String sentence) implements Event {}

  /**
   * A second has passed.
   *
   * @param at when
   */
  record Ticked(Instant at) implements Event {}

  /**
   * The session shall end: the terminal closes, or a signal asks for it.
   *
   * @param at when
   */
  record Stopping(Instant at) implements Event {}
}
