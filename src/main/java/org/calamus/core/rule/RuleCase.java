package org.calamus.core.rule;

import org.calamus.core.form.Form;
import org.calamus.core.form.SpeciesTable;
import org.calamus.core.record.CaptureRecord;

/** What a rule may look at: the record with the new value in it, the tables, and the bands used. */
record RuleCase(CaptureRecord record, Form form, SpeciesTable species, BandLedger ledger) {}
