package org.calamus.core.rule;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.calamus.core.form.Form;
import org.calamus.core.form.Species;
import org.calamus.core.record.BandNumber;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.Caught;
import org.calamus.core.record.FieldId;
import org.calamus.core.record.PastCapture;

/**
 * What a rule may look at.
 *
 * @param record the record with the new value in it
 * @param form the station's form
 * @param reference the published tables
 * @param known what the saved records tell
 * @param policy what the station decided
 * @param now the time of the check
 */
record RuleCase(
    CaptureRecord record, Form form, Reference reference, Known known, Policy policy, Instant now) {

  /** The record's species, where it is one of the table. */
  Optional<Species> species() {
    return record.code(FieldId.SPECIES).flatMap(reference.species()::byCode);
  }

  /** The kind of capture. */
  CaptureKind kind() {
    return record.kind();
  }

  /** The code of the sex; empty where none was given. */
  Optional<String> sex() {
    return record.code(FieldId.SEX);
  }

  /** The code of the age class; empty where none was given. */
  Optional<String> age() {
    return record.code(FieldId.AGE);
  }

  /** The bands. */
  BandLedger ledger() {
    return known.ledger();
  }

  /** Whether the bander was asked about the value that the field holds now, and kept it. */
  boolean isKept(FieldId field, String rule) {
    return record.entry(field).filter(e -> e.confirmedRules().contains(rule)).isPresent();
  }

  /** The day of the capture at the station. */
  LocalDate date() {
    return record.caught().day(policy.zone());
  }

  /** The instant by which the capture stands among others. */
  Instant when() {
    return when(record.caught());
  }

  /** The instant by which a capture stands among others. */
  Instant when(Caught caught) {
    return caught.when(policy.zone());
  }

  /** Whether the bird was not in the hand when its record was begun. */
  boolean isEnteredLater() {
    return record.caught().isEnteredLater(policy.zone());
  }

  /** An age class as it was stated of the bird at another capture. */
  AgeClasses.Statement stated(String code, PastCapture capture) {
    return new AgeClasses.Statement(code, capture.day(policy.zone()).getYear());
  }

  /** An age class as it is stated of the bird now. */
  AgeClasses.Statement stated(String code) {
    return new AgeClasses.Statement(code, date().getYear());
  }

  /** Whether a capture was not later than this one. */
  boolean isNotLater(PastCapture capture) {
    return !capture.caught().isAfter(record.caught(), policy.zone());
  }

  /**
   * Whether all that is known of a band is that it was read after this bird was caught, as where it
   * was put on by day and entered from paper in the evening.
   */
  boolean isOnlyReadLater(BandNumber band) {
    List<PastCapture> others =
        known.captures().ofBand(band).stream().filter(c -> c.id() != record.id()).toList();
    return isEnteredLater()
        && !others.isEmpty()
        && others.stream().noneMatch(c -> Known.hasFate(c) || isNotLater(c));
  }

  /**
   * The other captures of the bird whose band was read, oldest first; none where the bird wore
   * none, its number is not known, or has not been given yet. The record itself, where it was saved
   * before, is not among them.
   */
  List<PastCapture> history() {
    return kind().bandRead().flatMap(record::band).map(known::birds).orElse(List.of()).stream()
        .filter(c -> c.id() != record.id())
        .toList();
  }
}
