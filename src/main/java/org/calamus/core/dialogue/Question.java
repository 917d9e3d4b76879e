package org.calamus.core.dialogue;

import java.util.List;
import java.util.Optional;
import org.calamus.core.effort.NetEvent;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.FieldValue;
import org.calamus.core.record.PastCapture;
import org.calamus.core.record.Provenance;
import org.calamus.core.rule.BandString;
import org.calamus.core.rule.Finding;
import org.calamus.core.speech.Heard;

/** A question that waits for "affirm" or "negative". */
sealed interface Question {

  /**
   * Shall a value be kept that a rule doubts?
   *
   * @param field the field it is for
   * @param value the value
   * @param provenance how it came in
   * @param doubts what is doubted and not yet answered, the first being asked now
   * @param confirmed the ids of the rules about this value that are already overruled
   * @param elsewhere the answered doubts that are about another field, whose value they stand with
   * @param rest what was said in the same breath and comes after
   * @param before what was in question when the bird was said to go: offered again where it does
   *     not go
   */
  record Keep(
      FieldId field,
      FieldValue value,
      Provenance provenance,
      List<Finding> doubts,
      List<String> confirmed,
      List<Finding> elsewhere,
      List<Offer> rest,
      List<Offer> before)
      implements Question {
    public Keep {
      elsewhere = List.copyOf(elsewhere);
      doubts = List.copyOf(doubts);
      confirmed = List.copyOf(confirmed);
      rest = List.copyOf(rest);
      before = List.copyOf(before);
    }

    /** The same question, behind what was in question when the bird was said to go. */
    Keep after(List<Offer> asked) {
      return new Keep(field, value, provenance, doubts, confirmed, elsewhere, rest, asked);
    }

    /** What is offered where this value is not taken. */
    List<Offer> without() {
      return Offers.with(before, rest);
    }

    /** Whether how the bird goes is in question: that is said while another field is asked. */
    boolean isAboutRelease() {
      return field == FieldId.RELEASE;
    }

    /** Whether the doubt is about this value, and not about another that it shows up. */
    boolean isAboutValue() {
      return doubts.get(0).field() == field;
    }

    /** The value as an offer to which the bander has said nothing yet. */
    Offer offered() {
      return new Offer(field, new Heard.One(value), provenance);
    }

    /** What raises the question again: the value, and what was said behind it. */
    List<Offer> again() {
      return Offers.with(List.of(offered()), rest);
    }
  }

  /**
   * Shall the record go on without the evidence that another field names? The value behind which it
   * is asked is taken already; whatever else is given goes on.
   *
   * @param given the field whose value was taken
   * @param evidence the empty field
   * @param doubt what is doubted of the field that names the evidence
   */
  record Lacking(FieldId given, FieldId evidence, Finding doubt) implements Question {}

  /**
   * What became of the bands between the one expected and the one given? They are lost, destroyed,
   * or used out of order; until that is said the band is not taken.
   *
   * @param band the band that was given
   * @param provenance how it came in
   * @param skipped the bands before it that are not accounted for, in pieces of their string, at
   *     least one
   * @param rest what was said in the same breath and comes after
   */
  record Skipped(BandNumber band, Provenance provenance, List<BandString> skipped, List<Offer> rest)
      implements Question {
    public Skipped {
      skipped = List.copyOf(skipped);
      rest = List.copyOf(rest);
    }
  }

  /**
   * What does a band from elsewhere say, read once more? There is no ledger to compare it with, so
   * the two readings must agree.
   *
   * @param band the first reading
   * @param provenance how it came in
   * @param rest what was said in the same breath and comes after
   */
  record Twice(BandNumber band, Provenance provenance, List<Offer> rest) implements Question {
    public Twice {
      rest = List.copyOf(rest);
    }

    /** What raises the question again: the first reading, and what was said behind it. */
    List<Offer> again() {
      Offer first = new Offer(FieldId.BAND, new Heard.One(band), provenance);
      return Offers.with(List.of(first), rest);
    }
  }

  /**
   * Which of two values that sound alike was meant? Only the digits of one answer it.
   *
   * @param field the field
   * @param one the smaller
   * @param other the greater
   * @param rest what was said in the same breath and comes after
   */
  record Which(FieldId field, FieldValue one, FieldValue other, List<Offer> rest)
      implements Question {
    public Which {
      rest = List.copyOf(rest);
    }
  }

  /**
   * Shall the record that an earlier session left be carried on?
   *
   * @param record the record
   * @param saved the record as it was saved, where a correction of it was left
   */
  record Resume(CaptureRecord record, Optional<CaptureRecord> saved) implements Question {}

  /**
   * Which saved record is to be corrected? Last digits of its band answer it, or "affirm" for the
   * last one.
   *
   * @param last the last one
   */
  record Reopen(PastCapture last) implements Question {}

  /**
   * Which nets were opened or closed, and when? The code of one answers it, "affirm" for all, and a
   * time where it was not now.
   *
   * @param what what was done to them
   * @param field the field whose codes are listened for; empty where the form has none of nets
   */
  record Nets(NetEvent.What what, Optional<FieldId> field) implements Question {}

  /** Why is a saved record corrected? One of the reasons answers it. */
  record Reason() implements Question {}

  /** Shall the record be abandoned? */
  record Abandon() implements Question {}

  /** Shall the session end though a record is open? */
  record End() implements Question {}

  /** Shall the session end though the store has not kept everything? */
  record EndUnstored() implements Question {}
}
