package org.calamus.adapter.scripted;

import java.time.Duration;
import java.util.Optional;
import org.calamus.core.dialogue.Event;
import org.calamus.core.dialogue.Part;
import org.calamus.core.speech.Grammar;
import org.calamus.port.Clock;
import org.calamus.port.Ears;
import org.calamus.port.EventSink;
import org.calamus.port.Memos;

/** Stands in where the console cannot or shall not listen: hears nothing. */
public final class DeafEars implements Ears {

  private final Clock clock;
  private final Optional<String> sentence;
  private volatile EventSink sink = event -> {};

  /**
   * Ears that are off, as asked: nothing is said of them.
   *
   * @param clock the time of day
   */
  public DeafEars(Clock clock) {
    this(clock, Optional.empty());
  }

  /**
   * Ears that should hear and cannot.
   *
   * @param clock the time of day
   * @param sentence why, and what to do about it
   */
  public DeafEars(Clock clock, String sentence) {
    this(clock, Optional.of(sentence));
  }

  private DeafEars(Clock clock, Optional<String> sentence) {
    this.clock = clock;
    this.sentence = sentence;
  }

  @Override
  public void start(EventSink sink) {
    this.sink = sink;
    sentence.ifPresent(why -> sink.post(new Event.PartDown(clock.now(), Part.EARS, why)));
  }

  @Override
  public void listenFor(Grammar grammar) {
    // nothing is heard
  }

  @Override
  public void shut() {
    // nothing is heard
  }

  @Override
  public void open() {
    // nothing is heard
  }

  @Override
  public void openAtOnce() {
    // nothing is heard
  }

  @Override
  public void finishUtterance() {
    // nothing is heard
  }

  @Override
  public void recordMemo(Memos.Place place, Duration longest) {
    sink.post(new Event.MemoFailed(clock.now(), "There is no microphone: type the note."));
  }

  @Override
  public void stopMemo() {
    // none is ever taken
  }

  @Override
  public void close() {
    // nothing to close
  }
}
