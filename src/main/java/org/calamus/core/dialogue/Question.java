package org.calamus.core.dialogue;

import java.util.List;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.Finding;

/** A question that waits for "affirm" or "negative". */
sealed interface Question {

  /**
   * Shall a value be kept that a rule doubts?
   *
   * @param field the field it is for
   * @param value the value
   * @param provenance how it came in
   * @param doubts what is doubted and not yet answered, the first being asked now
   * @param confirmed the ids of the rules already overruled
   * @param rest what was said in the same breath and comes after
   */
  record Keep(
      FieldId field,
      FieldValue value,
      Provenance provenance,
      List<Finding> doubts,
      List<String> confirmed,
      List<Offer> rest)
      implements Question {
    public Keep {
      doubts = List.copyOf(doubts);
      confirmed = List.copyOf(confirmed);
      rest = List.copyOf(rest);
    }
  }

  /**
   * Shall the record that an earlier session left be carried on?
   *
   * @param record the record
   */
  record Resume(CaptureRecord record) implements Question {}

  /** Shall the record be abandoned? */
  record Abandon() implements Question {}

  /** Shall the session end though a record is open? */
  record End() implements Question {}

  /** Shall the session end though the store has not kept everything? */
  record EndUnstored() implements Question {}
}
