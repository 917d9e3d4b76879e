package org.calamus.core.dialogue;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.FieldId;

/**
 * What an utterance met: as much of a session's state as decides what its words mean. It can be
 * written down, and what is heard anew can be understood in it later.
 *
 * @param asked the field that is asked or in question
 * @param question the open question as shown; empty where none is open
 * @param isPaused whether the console only waits to be told to go on
 * @param isUnheeded whether nothing said is heeded: the voice speaks, or the talk key is not
 *     pressed
 * @param corrects the field that a correction without a name is about
 * @param expected the band that last digits complete
 * @param values what the record in the hand holds, as stored, by field
 */
public record Circumstances(
    Optional<FieldId> asked,
    String question,
    boolean isPaused,
    boolean isUnheeded,
    Optional<FieldId> corrects,
    Optional<BandNumber> expected,
    Map<FieldId, String> values) {

  /** Copies the map. */
  public Circumstances {
    Objects.requireNonNull(question);
    Map<FieldId, String> copy = new EnumMap<>(FieldId.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
  }

  /**
   * A field is asked and nothing else is going on.
   *
   * @param asked the field
   * @param values what the record in the hand holds
   */
  public static Circumstances asking(FieldId asked, Map<FieldId, String> values) {
    return new Circumstances(
        Optional.of(asked), "", false, false, Optional.empty(), Optional.empty(), values);
  }

  /** Whether a question is open. */
  public boolean isQuestioning() {
    return !question.isEmpty();
  }

  static Circumstances of(State state, Setup setup) {
    Optional<FieldId> asked = Dialogue.askedField(state);
    Optional<FieldId> inQuestion =
        Doubts.goneOn(state).question().isPresent() ? asked : Optional.empty();
    Map<FieldId, String> values = new EnumMap<>(FieldId.class);
    state.record().ifPresent(r -> r.entries().forEach((f, e) -> values.put(f, e.value().text())));
    return new Circumstances(
        asked,
        state.question().map(q -> new Questions(setup).shown(state, q)).orElse(""),
        Heeding.isPaused(state),
        Heeding.isUnheeded(state),
        inQuestion.or(state::lastGiven),
        new NextBand(setup).completing(state),
        values);
  }
}
