package org.calamus.core.rule;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.calamus.core.form.Form;
import org.calamus.core.form.Species;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.record.CaptureKind;
import org.calamus.core.record.CaptureRecord;
import org.calamus.core.record.FieldId;

/**
 * What a rule may look at.
 *
 * @param record the record with the new value in it
 * @param form the station's form
 * @param table the species that the station knows
 * @param known what the saved records tell
 * @param policy what the station decided
 * @param now the time of the check
 */
record RuleCase(
    CaptureRecord record, Form form, SpeciesTable table, Known known, Policy policy, Instant now) {

  /** The record's species, where it is one of the table. */
  Optional<Species> species() {
    return record.code(FieldId.SPECIES).flatMap(table::byCode);
  }

  /** The kind of capture. */
  CaptureKind kind() {
    return record.kind();
  }

  /** The bands. */
  BandLedger ledger() {
    return known.ledger();
  }

  /** The day of the capture at the station. */
  LocalDate date() {
    return record.capturedAt().atZone(policy.zone()).toLocalDate();
  }
}
