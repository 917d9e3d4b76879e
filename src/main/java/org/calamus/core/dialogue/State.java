package org.calamus.core.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.calamus.core.effort.NetLog;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.rule.Known;

/**
 * Where a session stands. Immutable; made and changed by {@link Dialogue} alone.
 *
 * @param record the bird in the hand; empty before its first value
 * @param nextId the number of the next new record
 * @param open the field asked now; empty where every field has a value
 * @param question the question that waits for an answer
 * @param changes the changes of the record, newest last
 * @param known what the saved records tell
 * @param recent the last saved records, newest first
 * @param savedCount the records saved in this session
 * @param lastSaved the bird saved last in this session, to which remarks may be added
 * @param face what the bander was last told
 * @param console what is known of the parts
 * @param desk what is in hand besides the bird
 */
public record State(
    Optional<CaptureRecord> record,
    long nextId,
    Optional<FieldId> open,
    Optional<Question> question,
    List<Change> changes,
    Known known,
    List<String> recent,
    int savedCount,
    Optional<CaptureRecord> lastSaved,
    Face face,
    Console console,
    Desk desk) {

  private static final int RECENT = 12;

  /** Copies the lists. */
  public State {
    changes = List.copyOf(changes);
    recent = List.copyOf(recent);
  }

  /** The state before the first event, where no net was ever opened. */
  public static State atStart(long nextId, FieldId first, Known known) {
    return atStart(nextId, first, known, NetLog.empty());
  }

  /**
   * The state before the first event.
   *
   * @param nextId the number of the next new record
   * @param first the field asked first
   * @param known what the saved records tell
   * @param nets when the nets were open
   */
  public static State atStart(long nextId, FieldId first, Known known, NetLog nets) {
    return new State(
        Optional.empty(),
        nextId,
        Optional.of(first),
        Optional.empty(),
        List.of(),
        known,
        List.of(),
        0,
        Optional.empty(),
        Face.atStart(),
        Console.atStart(),
        Desk.of(nets));
  }

  /** The field that was spoken of last, or else the one that was given last. */
  Optional<FieldId> lastGiven() {
    return face.told()
        .field()
        .or(
            () ->
                changes.stream()
                    .filter(Change.Given.class::isInstance)
                    .map(Change::field)
                    .reduce((one, next) -> next));
  }

  State withChanges(List<Change> made) {
    return new State(
        record,
        nextId,
        open,
        question,
        made,
        known,
        recent,
        savedCount,
        lastSaved,
        face,
        console,
        desk);
  }

  /** A field was left as it was. */
  State withPassed(FieldId field) {
    List<Change> made = new ArrayList<>(changes);
    made.add(new Change.Passed(field));
    return withChanges(made);
  }

  State face(UnaryOperator<Face> change) {
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        known,
        recent,
        savedCount,
        lastSaved,
        change.apply(face),
        console,
        desk);
  }

  State console(UnaryOperator<Console> change) {
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        known,
        recent,
        savedCount,
        lastSaved,
        face,
        change.apply(console),
        desk);
  }

  State desk(UnaryOperator<Desk> change) {
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        known,
        recent,
        savedCount,
        lastSaved,
        face,
        console,
        change.apply(desk));
  }

  /** Whether the record is a saved one that is being corrected. */
  boolean isCorrecting() {
    return desk.correction().isPresent();
  }

  State withKnown(Known told) {
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        told,
        recent,
        savedCount,
        lastSaved,
        face,
        console,
        desk);
  }

  /** A saved record was corrected; the bander's list tells so. */
  State withCorrected(CaptureRecord corrected, Known told, String line) {
    List<String> lines = new ArrayList<>(recent);
    lines.add(0, line);
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        told,
        lines.subList(0, Math.min(RECENT, lines.size())),
        savedCount,
        lastSaved.map(l -> l.id() == corrected.id() ? corrected : l),
        face,
        console,
        desk);
  }

  State message(String text) {
    return face(f -> f.withMessage(text));
  }

  State withOpen(Optional<FieldId> field) {
    return new State(
        record,
        nextId,
        field,
        question,
        changes,
        known,
        recent,
        savedCount,
        lastSaved,
        face,
        console,
        desk);
  }

  State withQuestion(Optional<Question> asked) {
    return new State(
        record,
        nextId,
        open,
        asked,
        changes,
        known,
        recent,
        savedCount,
        lastSaved,
        face,
        console,
        desk);
  }

  State withRecord(CaptureRecord changed, List<Change> made) {
    return new State(
        Optional.of(changed),
        Math.max(nextId, changed.id() + 1),
        open,
        question,
        made,
        known,
        recent,
        savedCount,
        lastSaved,
        face,
        console,
        desk);
  }

  State withChange(CaptureRecord changed, Change change) {
    List<Change> made = new ArrayList<>(changes);
    made.add(change);
    return withRecord(changed, made);
  }

  /** A band was accounted for by a record of its own. */
  State withAccounted(CaptureRecord accounted) {
    return new State(
        record,
        Math.max(nextId, accounted.id() + 1),
        open,
        question,
        changes,
        known.with(accounted),
        recent,
        savedCount,
        lastSaved.map(l -> l.id() == accounted.id() ? accounted : l),
        face,
        console,
        desk);
  }

  /** A record that nobody had in the hand was saved, as that of a band that was lost. */
  State withListed(String line) {
    List<String> lines = new ArrayList<>(recent);
    lines.add(0, line);
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        known,
        lines.subList(0, Math.min(RECENT, lines.size())),
        savedCount + 1,
        lastSaved,
        face,
        console,
        desk);
  }

  State withoutRecord(FieldId first) {
    return new State(
        Optional.empty(),
        nextId,
        Optional.of(first),
        Optional.empty(),
        List.of(),
        known,
        recent,
        savedCount,
        lastSaved,
        face.withKeys("")
            .withMissed(Misses.none())
            .withEchoed(Optional.empty())
            .withRest(List.of()),
        console.withWaiting(Optional.empty()).withWarned(View.Hold.WITHIN),
        desk.withoutCorrection());
  }

  State withSaved(CaptureRecord saved, String line) {
    List<String> lines = new ArrayList<>(recent);
    lines.add(0, line);
    return new State(
        record,
        nextId,
        open,
        question,
        changes,
        known.with(saved),
        lines.subList(0, Math.min(RECENT, lines.size())),
        savedCount + 1,
        Optional.of(saved),
        face,
        console,
        desk);
  }
}
